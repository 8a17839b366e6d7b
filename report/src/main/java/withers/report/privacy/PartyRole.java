package withers.report.privacy;

import java.util.Locale;
import java.util.stream.Stream;
import withers.fact.Fact;
import withers.fact.Party;

/** Somebody whom a fact names, and as whom, in a word or two. */
record PartyRole(Party party, String word) {

  static Stream<PartyRole> of(Fact fact) {
    if (fact instanceof Fact.HandedOver handedOver) {
      return Stream.of(
          new PartyRole(handedOver.giver(), "gave the animal"),
          new PartyRole(handedOver.receiver(), "received the animal"));
    }
    if (fact instanceof Fact.Registered registered) {
      return registered.contacts().entrySet().stream()
          .map(one -> new PartyRole(one.getValue(), word(one.getKey()) + " contact"));
    }
    return one(fact);
  }

  private static Stream<PartyRole> one(Fact fact) {
    if (fact instanceof Fact.Attended attended) {
      return Stream.of(new PartyRole(attended.client(), "clinic's client"));
    }
    if (fact instanceof Fact.Lost lost) {
      return Stream.of(new PartyRole(lost.reporter(), "reported it lost"));
    }
    if (fact instanceof Fact.Found found) {
      return Stream.of(new PartyRole(found.holder(), "found it"));
    }
    if (fact instanceof Fact.Implanted implanted) {
      return Stream.of(new PartyRole(implanted.implanter(), "implanted the chip"));
    }
    return fact instanceof Fact.Supplied supplied
        ? Stream.of(new PartyRole(supplied.purchaser(), "bought the numbers"))
        : Stream.empty();
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }
}
