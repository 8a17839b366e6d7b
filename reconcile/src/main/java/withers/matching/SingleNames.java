package withers.matching;

import java.util.List;
import withers.matching.form.NameWord;
import withers.matching.form.Reading;

/** Compares names of which one at least is a single word, given or family name. Symmetric. */
record SingleNames(Rarity rarity, NameOrder order) {

  static boolean isSingle(Reading reading) {
    return reading.given().isEmpty() && reading.family().isEmpty() && !reading.either().isEmpty();
  }

  NameMatch match(Reading one, Reading other) {
    if (isSingle(one) && isSingle(other)) {
      return singles(one.either().get(0), other.either().get(0));
    }
    return isSingle(one)
        ? withFull(one.either().get(0), other)
        : withFull(other.either().get(0), one);
  }

  private NameMatch singles(NameWord one, NameWord other) {
    boolean given = one.given().isKnown() || other.given().isKnown();
    return given ? given(one, other) : family(one, other);
  }

  /** What it agrees with decides what it is. */
  private NameMatch withFull(NameWord single, Reading full) {
    NameMatch family = bestFamily(single, full.family());
    if (full.given().isEmpty()) {
      return family;
    }
    NameMatch given = given(single, full.given().get(0));
    boolean better = given.given().compareTo(family.family()) < 0;
    return better && given.given() != Level.INITIAL ? given : family;
  }

  private NameMatch bestFamily(NameWord single, List<NameWord> names) {
    if (names.isEmpty()) {
      return NameMatch.NOT_STATED;
    }
    NameMatch best = family(single, names.get(0));
    for (int i = 1; i < names.size(); i++) {
      best = order.better(best, family(single, names.get(i)));
    }
    return best;
  }

  private NameMatch given(NameWord one, NameWord other) {
    Level level = Words.given(one, other);
    return new NameMatch(level, rarity.given(level, one, other), Level.MISSING, 0, false);
  }

  private NameMatch family(NameWord one, NameWord other) {
    Level level = Words.family(one, other);
    return new NameMatch(Level.MISSING, 0, level, rarity.family(level, one, other), false);
  }
}
