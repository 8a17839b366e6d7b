package withers.demo;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import withers.finding.FindingKind;

/** What can really be wrong with an animal or its registration, whatever anybody has noticed. */
enum Problem {
  /** Somebody has the animal whose it is not, and could ask whose it is. */
  FOUND_AND_WAITING("found-waiting"),
  /** The animal is gone, and its number leads to nobody who could be called. */
  LOST_WITHOUT_CONTACT("lost-unreachable"),
  /** Somebody's card of another animal has this number. */
  NUMBER_SHARED("number-on-two-animals"),
  /** No registry has the number. */
  NOBODY_REGISTERED("unregistered", "prepaid-unused"),
  /** A registry has the keeper, under a number that was typed with one slip. */
  NUMBER_MISTYPED("mistyped-registration", "unregistered", "prepaid-unused"),
  /** A registry has the number, and a word such as "Owner" for a name. */
  NOBODY_NAMED("placeholder-contact"),
  /** Every registration leads to somebody else than the keeper. */
  WRONG_PERSON("contact-behind", "chips-diverge", "registries-disagree"),
  /** One chip leads to the keeper, the other to somebody else. */
  CHIPS_DIVERGE("chips-diverge"),
  /** The registration leads to the keeper, with a phone and an address from before a move. */
  OLD_DETAILS("details-differ"),
  /** The registration leads to the keeper, of whom our own records know nothing. */
  WRONG_RECORD("records-behind");

  private final List<String> kinds;

  Problem(String... kinds) {
    this.kinds = List.of(kinds);
  }

  /** Whether a finding of this kind says so. */
  boolean isToldBy(FindingKind kind) {
    return kinds.contains(kind.word());
  }

  /** Whether a finding of this kind is told instead: an animal gets one row. */
  boolean isHiddenBy(FindingKind kind) {
    return kinds.stream().map(FindingKind::of).noneMatch(own -> own.compareTo(kind) < 0);
  }

  /** The problems that a finding of this kind may stand for; none when truth does not tell. */
  static Set<Problem> toldBy(FindingKind kind) {
    Set<Problem> told = EnumSet.noneOf(Problem.class);
    Stream.of(values()).filter(problem -> problem.isToldBy(kind)).forEach(told::add);
    return told;
  }
}
