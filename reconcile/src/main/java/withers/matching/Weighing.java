package withers.matching;

import java.util.List;

/**
 * The verdict on two contacts, and all that led to it. Never details.
 *
 * @param verdict what it says
 * @param ground the rule that decided
 * @param prior the weight before anything is compared, in bits: against strangers
 * @param householdPrior the same for two people of one household
 * @param traits all traits, in order, those that are missing too
 * @param samePerson the probability that they are one person, from 0 to 1
 * @param sameHousehold the probability that they are two of one household
 */
public record Weighing(
    Verdict verdict,
    Ground ground,
    double prior,
    double householdPrior,
    List<Weighed> traits,
    double samePerson,
    double sameHousehold) {

  /**
   * What one trait says.
   *
   * @param weight for one person and against strangers, in bits, rarity included
   * @param household for one household and against strangers, in bits, rarity included
   * @param rarity the part of both weights that is due to how rare or common a name is
   */
  public record Weighed(Trait trait, Level level, double weight, double household, double rarity) {

    /** What it says for one person and against two of one household, in bits. */
    public double againstHousehold() {
      return weight - household;
    }
  }

  public Weighing {
    traits = List.copyOf(traits);
  }

  /** For one person and against strangers, in bits: the prior and all traits. */
  public double score() {
    return prior + traits.stream().mapToDouble(Weighed::weight).sum();
  }

  /** For one household and against strangers, in bits. */
  public double householdScore() {
    return householdPrior + traits.stream().mapToDouble(Weighed::household).sum();
  }

  /** How this trait compares. */
  public Level level(Trait trait) {
    return traits.get(trait.ordinal()).level();
  }

  /** The traits in which something is to be brought up to date if both are one person. */
  public List<Trait> others() {
    return traits.stream().filter(Weighing::isOther).map(Weighed::trait).toList();
  }

  private static boolean isOther(Weighed one) {
    boolean slip = one.level() == Level.CLOSE;
    return one.level().isOther()
        || slip && (one.trait() == Trait.PHONE || one.trait() == Trait.EMAIL);
  }
}
