package withers.matching;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import withers.matching.Estimation.Estimate;
import withers.matching.Mixture.PairClass;

/** Why an estimate must not be used. */
final class Refusals {

  /** Fewer pairs say nothing about levels that two in a hundred have (our judgement). */
  static final int FEWEST_PAIRS = 1_000;

  /** A smaller share of a kind can't be told from noise (our judgement). */
  static final double SMALLEST_SHARE = 0.02;

  private Refusals() {}

  static List<String> of(Estimate estimate, double random, double candidates) {
    List<String> refusals = new ArrayList<>();
    tooFew("random pairs", random, refusals);
    tooFew("pairs that may be one person", candidates, refusals);
    if (!estimate.converged()) {
      refusals.add(
          "Expected the estimation to converge, but it still moved after %d rounds"
              .formatted(estimate.rounds()));
    }
    shares(estimate.mixture().classes(), refusals);
    for (Trait trait : Trait.values()) {
      agreement(trait, estimate.mixture().classes(), refusals);
    }
    return refusals;
  }

  private static void tooFew(String which, double pairs, List<String> refusals) {
    if (pairs < FEWEST_PAIRS) {
      refusals.add(
          "Expected at least %d %s, but found %.0f: import more exports first"
              .formatted(FEWEST_PAIRS, which, pairs));
    }
  }

  private static void shares(List<PairClass> classes, List<String> refusals) {
    double one = classes.get(Calibration.SAME_PERSON).share();
    if (one < SMALLEST_SHARE || one > 1 - SMALLEST_SHARE) {
      refusals.add(
          String.format(
              Locale.ROOT,
              "Expected that between %.0f and %.0f %% of the pairs are of one person, but estimated %.1f %%",
              100 * SMALLEST_SHARE,
              100 * (1 - SMALLEST_SHARE),
              100 * one));
    }
  }

  private static void agreement(Trait trait, List<PairClass> classes, List<String> refusals) {
    double one = classes.get(Calibration.SAME_PERSON).levels().get(trait.ordinal()).get(0);
    double two = classes.get(Calibration.STRANGERS).levels().get(trait.ordinal()).get(0);
    if (one <= two) {
      refusals.add(
          String.format(
              Locale.ROOT,
              "Expected %s of %s oftener in one person than among strangers, but estimated %.4f and %.4f",
              trait.levels().get(0).word(),
              trait.word(),
              one,
              two));
    }
  }
}
