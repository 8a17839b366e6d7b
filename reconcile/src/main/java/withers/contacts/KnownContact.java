package withers.contacts;

import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;
import withers.id.OrganisationId;
import withers.matching.form.Address;
import withers.matching.form.Email;
import withers.matching.form.NormalForm;
import withers.matching.form.Phone;

/**
 * A contact as it is compared. The text form never shows details.
 *
 * @param is what it is, without details
 */
record KnownContact(NormalForm form, Known is) {

  static KnownContact of(NormalForm form, Optional<OrganisationId> organisation) {
    boolean canBeReached = !form.phones().isEmpty() || !form.emails().isEmpty();
    // A town alone is no place.
    boolean isOnlyAName = !canBeReached && form.address().filter(Address::hasStreet).isEmpty();
    return new KnownContact(
        form,
        new Known(organisation, form.name().isEmpty() && isOnlyAName, canBeReached, isOnlyAName));
  }

  /** Whether a phone or a mailbox of both is the same. */
  static boolean isReachedAlike(NormalForm one, NormalForm other) {
    return isOneOf(one.phones(), other.phones(), Phone::isSame)
        || isOneOf(one.emails(), other.emails(), Email::isSame);
  }

  /** A loop: streams of one or two cost more than what is asked of them. */
  private static <T> boolean isOneOf(List<T> some, List<T> others, BiPredicate<T, T> same) {
    for (T one : some) {
      for (T other : others) {
        if (same.test(one, other)) {
          return true;
        }
      }
    }
    return false;
  }

  @Override
  public String toString() {
    return "KnownContact[details withheld]";
  }
}
