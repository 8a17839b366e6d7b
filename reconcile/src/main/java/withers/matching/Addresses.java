package withers.matching;

import java.util.Optional;
import withers.matching.form.Address;

/** Compares addresses. Symmetric. */
final class Addresses {
  private Addresses() {}

  static Level level(Optional<Address> one, Optional<Address> other) {
    return one.isEmpty() || other.isEmpty()
        ? Level.MISSING
        : level(one.orElseThrow(), other.orElseThrow());
  }

  private static Level level(Address one, Address other) {
    if (!one.hasStreet() || !other.hasStreet()) {
      return withoutStreet(one, other);
    }
    boolean same = isSameStreet(one, other);
    if (isOtherPlace(one, other) || !same && !Likeness.isSlipApart(one.core(), other.core())) {
      return Level.DIFFERENT;
    }
    return house(one, other, same ? Level.EXACT : Level.CLOSE);
  }

  private static Level house(Address one, Address other, Level street) {
    if (one.number().isEmpty() != other.number().isEmpty()) {
      return Level.PARTLY;
    }
    return one.number().equals(other.number()) && !differ(one.unit(), other.unit())
        ? street
        : Level.NEAR;
  }

  private static boolean isSameStreet(Address one, Address other) {
    return one.street().equals(other.street())
        || one.core().equals(other.core())
        || one.coreWords().containsAll(other.coreWords())
        || other.coreWords().containsAll(one.coreWords());
  }

  /** The postcode and the town are others, and neither is a slip. */
  private static boolean isOtherPlace(Address one, Address other) {
    boolean samePlace =
        isAlike(one.postcode(), other.postcode()) || isAlike(one.town(), other.town());
    return !samePlace
        && (differ(one.postcode(), other.postcode()) || differ(one.town(), other.town()));
  }

  private static boolean isAlike(String one, String other) {
    return !one.isEmpty()
        && !other.isEmpty()
        && (one.equals(other) || Likeness.isSlipApart(one, other));
  }

  private static boolean differ(String one, String other) {
    return !one.isEmpty() && !other.isEmpty() && !one.equals(other);
  }

  private static Level withoutStreet(Address one, Address other) {
    if (isOtherPlace(one, other)) {
      return Level.DIFFERENT;
    }
    boolean town = isAlike(one.postcode(), other.postcode()) || isAlike(one.town(), other.town());
    return town ? Level.TOWN : Level.MISSING;
  }
}
