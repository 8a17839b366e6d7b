package withers.matching;

/**
 * The weights of all levels, worked out once. Safe for several threads.
 *
 * <p>An agreement never speaks against one person, even if it is met more often in a household: two
 * who share a landline are no less one person for it.
 */
final class Weights {
  private static final int LEVELS = Level.values().length;

  private final Shares givenExact;
  private final Shares familyExact;
  private final double[][] weights = new double[Trait.values().length][LEVELS];
  private final double[][] household = new double[Trait.values().length][LEVELS];

  Weights(Parameters parameters) {
    givenExact = parameters.shares(Trait.GIVEN_NAME, Level.EXACT);
    familyExact = parameters.shares(Trait.FAMILY_NAME, Level.EXACT);
    for (Trait trait : Trait.values()) {
      trait.levels().forEach(level -> set(trait, level, parameters.shares(trait, level)));
    }
  }

  private void set(Trait trait, Level level, Shares shares) {
    double weight = shares.weight();
    double same = level.isAgreement() ? Math.max(weight, 0) : weight;
    double together = shares.householdWeight();
    weights[trait.ordinal()][level.ordinal()] = same;
    household[trait.ordinal()][level.ordinal()] =
        level.isAgreement() ? Math.min(together, same) : together;
  }

  /** For one person and against strangers, in bits; 0 of what is missing. */
  double weight(Trait trait, Level level) {
    return weights[trait.ordinal()][level.ordinal()];
  }

  /**
   * For one household and against strangers, in bits; 0 of what is missing.
   *
   * @param rarity how much rarer than on the average the name is, 0 of what is no name
   */
  double household(Trait trait, Level level, double rarity) {
    double known =
        trait == Trait.GIVEN_NAME && level == Level.EXACT
            ? sameGivenName(rarity)
            : household[trait.ordinal()][level.ordinal()];
    return known + rarity;
  }

  /**
   * How often two of one household bear this very given name: by custom, as father and son do, or
   * by chance, as often as it is common.
   */
  private double sameGivenName(double rarity) {
    double share = givenExact.strangers() / Bits.odds(rarity);
    return Bits.log2((givenExact.sameHousehold() + share) / givenExact.strangers());
  }

  /**
   * How much rarer than given or family names on the average one with this share of bearers is, in
   * bits.
   */
  double rarity(Trait trait, double share) {
    Shares exact = trait == Trait.GIVEN_NAME ? givenExact : familyExact;
    return Bits.log2(exact.strangers() / share);
  }
}
