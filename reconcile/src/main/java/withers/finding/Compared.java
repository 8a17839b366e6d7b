package withers.finding;

import java.util.List;
import withers.matching.Ground;
import withers.matching.Level;
import withers.matching.Trait;
import withers.matching.Verdict;
import withers.matching.Weighing;

/**
 * How the contact of whoever has the animal and a registered one compare, and what the verdict came
 * from. Never details.
 *
 * @param prior the weight before anything is compared, in hundredths of a bit
 * @param weights by trait, in order, those that are missing too
 * @param samePerson how likely they are one person, in a thousand
 * @param sameHousehold how likely they are two of one household, in a thousand
 */
public record Compared(
    Verdict verdict,
    Ground ground,
    long prior,
    List<Weight> weights,
    long samePerson,
    long sameHousehold) {

  /**
   * What one trait says.
   *
   * @param hundredths for one person and against strangers, in hundredths of a bit
   */
  public record Weight(Trait trait, Level level, long hundredths) {}

  private static final int HUNDRED = 100;
  private static final int THOUSAND = 1000;

  public Compared {
    weights = List.copyOf(weights);
  }

  /** A weighing in whole numbers, which are the same on every machine. */
  public static Compared of(Weighing weighing) {
    return new Compared(
        weighing.verdict(),
        weighing.ground(),
        Math.round(weighing.prior() * HUNDRED),
        weighing.traits().stream()
            .map(one -> new Weight(one.trait(), one.level(), Math.round(one.weight() * HUNDRED)))
            .toList(),
        Math.round(weighing.samePerson() * THOUSAND),
        Math.round(weighing.sameHousehold() * THOUSAND));
  }

  /** The prior and all weights, in hundredths of a bit. */
  public long score() {
    return prior + weights.stream().mapToLong(Weight::hundredths).sum();
  }
}
