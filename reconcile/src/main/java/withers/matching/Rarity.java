package withers.matching;

import withers.matching.form.NameWord;
import withers.matching.form.Reading;

/** How much rarer than names on the average those are that agree, in bits. Symmetric. */
record Rarity(Weights weights, Frequencies frequencies) {

  double given(Level level, Reading one, Reading other) {
    return level.isAgreement() ? given(level, one.given().get(0), other.given().get(0)) : 0;
  }

  /** Of a slip it isn't known how rare the name is that was meant. */
  double given(Level level, NameWord one, NameWord other) {
    return isNamed(level)
        ? weights.rarity(
            Trait.GIVEN_NAME, Math.max(frequencies.given(one), frequencies.given(other)))
        : 0;
  }

  double family(Level level, Reading one, Reading other) {
    return isNamed(level) || level == Level.PARTLY
        ? weights.rarity(Trait.FAMILY_NAME, shared(one, other))
        : 0;
  }

  double family(Level level, NameWord one, NameWord other) {
    return isNamed(level) ? weights.rarity(Trait.FAMILY_NAME, share(one, other)) : 0;
  }

  private static boolean isNamed(Level level) {
    return level == Level.EXACT || level == Level.FORM;
  }

  /** The rarest name in common says most; without one in common, the commonest there is. */
  private double shared(Reading one, Reading other) {
    double rarest = 1;
    double commonest = 0;
    for (NameWord name : one.family()) {
      for (NameWord second : other.family()) {
        double share = share(name, second);
        commonest = Math.max(commonest, share);
        rarest = Words.isSame(name, second) ? Math.min(rarest, share) : rarest;
      }
    }
    return rarest < 1 ? rarest : commonest;
  }

  private double share(NameWord one, NameWord other) {
    return Math.max(frequencies.family(one), frequencies.family(other));
  }
}
