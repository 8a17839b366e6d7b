package withers.custody;

import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.Stream;
import withers.fact.ContactRole;
import withers.fact.Fact;
import withers.fact.Party;

/** Everybody whom a fact names. */
public final class Parties {
  private Parties() {}

  public static Stream<Party> of(Fact fact) {
    if (fact instanceof Fact.HandedOver handedOver) {
      return Stream.of(handedOver.giver(), handedOver.receiver());
    }
    if (fact instanceof Fact.Registered registered) {
      return registered.contacts().values().stream();
    }
    return one(fact).stream();
  }

  /** Those among them that rules ask about: of a registration, whom it calls first. */
  static Stream<Party> askedAbout(Fact fact) {
    Stream.Builder<Party> parties = Stream.builder();
    forEachAskedAbout(fact, parties);
    return parties.build();
  }

  /** Whether that holds for one of them. */
  static boolean isSomeAskedAbout(Fact fact, Predicate<Party> condition) {
    if (fact instanceof Fact.HandedOver handedOver) {
      return condition.test(handedOver.giver()) || condition.test(handedOver.receiver());
    }
    return fact instanceof Fact.Registered registered
        ? registered.contact(ContactRole.PRIMARY).filter(condition).isPresent()
        : one(fact).filter(condition).isPresent();
  }

  /** The same for many facts: streams of one or two would cost more than all the rest. */
  static void forEachAskedAbout(Fact fact, Consumer<Party> taker) {
    if (fact instanceof Fact.HandedOver handedOver) {
      taker.accept(handedOver.giver());
      taker.accept(handedOver.receiver());
    } else if (fact instanceof Fact.Registered registered) {
      registered.contact(ContactRole.PRIMARY).ifPresent(taker);
    } else {
      one(fact).ifPresent(taker);
    }
  }

  private static java.util.Optional<Party> one(Fact fact) {
    if (fact instanceof Fact.Attended attended) {
      return java.util.Optional.of(attended.client());
    }
    if (fact instanceof Fact.Lost lost) {
      return java.util.Optional.of(lost.reporter());
    }
    if (fact instanceof Fact.Found found) {
      return java.util.Optional.of(found.holder());
    }
    if (fact instanceof Fact.Implanted implanted) {
      return java.util.Optional.of(implanted.implanter());
    }
    if (fact instanceof Fact.Supplied supplied) {
      return java.util.Optional.of(supplied.purchaser());
    }
    return java.util.Optional.empty();
  }
}
