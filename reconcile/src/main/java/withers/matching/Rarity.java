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
    return isNamed(level) ? weights.rarity(Trait.GIVEN_NAME, givenShare(one, other)) : 0;
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
    for (int i = 0; i < one.family().size(); i++) {
      for (int j = 0; j < other.family().size(); j++) {
        double share = share(one.family().get(i), other.family().get(j));
        boolean same = Words.isSame(one.family().get(i), other.family().get(j));
        commonest = Math.max(commonest, share);
        rarest = same ? Math.min(rarest, share) : rarest;
      }
    }
    return rarest < 1 ? rarest : commonest;
  }

  private double givenShare(NameWord one, NameWord other) {
    double share = frequencies.given(one);
    return isWritten(one, other) ? share : Math.max(share, frequencies.given(other));
  }

  private double share(NameWord one, NameWord other) {
    double share = frequencies.family(one);
    return isWritten(one, other) ? share : Math.max(share, frequencies.family(other));
  }

  /** Whether both are written the same, so that one need not be looked up. */
  private static boolean isWritten(NameWord one, NameWord other) {
    return one.text().equals(other.text()) && one.key().equals(other.key());
  }
}
