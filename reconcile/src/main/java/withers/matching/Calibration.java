package withers.matching;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import withers.matching.Estimation.Estimate;
import withers.matching.Mixture.PairClass;

/**
 * Parameters from contacts of which nobody has said who is who. How often strangers agree is
 * counted on random pairs; how often the others do is estimated on pairs that may be one person, as
 * a mixture of one person, two of one household, and strangers. Pure.
 *
 * @param start parameters to begin with; their prior and costs are kept
 */
public record Calibration(Parameters start) {
  static final int SAME_PERSON = 0;
  static final int SAME_HOUSEHOLD = 1;
  static final int STRANGERS = 2;

  private static final Estimation ESTIMATION = new Estimation(Set.of(STRANGERS), 1e-6, 2_000);

  /** The shares of the three kinds among candidates before anything is known (our judgement). */
  private static final List<Double> SHARES = List.of(0.6, 0.2, 0.2);

  /** A level that was never met is not impossible for that. */
  private static final double LEAST = 1e-4;

  /**
   * What came out.
   *
   * @param estimate round by round
   * @param parameters what it comes to; empty when there are refusals
   * @param refusals why the estimate is no good, as sentences; none when it is
   */
  public record Result(Estimate estimate, Optional<Parameters> parameters, List<String> refusals) {
    public Result {
      refusals = List.copyOf(refusals);
    }
  }

  /**
   * Counts and estimates.
   *
   * @param random how many random pairs have each pattern
   * @param candidates how many pairs that may be one person have each pattern
   * @param version what the parameters are to be called
   */
  public Result calibrate(
      Map<Pattern, Double> random, Map<Pattern, Double> candidates, String version) {
    Estimate estimate = ESTIMATION.estimate(candidates, beginning(random));
    List<String> refusals = Refusals.of(estimate, pairs(random), pairs(candidates));
    Optional<Parameters> parameters =
        refusals.isEmpty()
            ? Optional.of(parameters(estimate.mixture(), version))
            : Optional.empty();
    return new Result(estimate, parameters, refusals);
  }

  private static double pairs(Map<Pattern, Double> counts) {
    return counts.values().stream().mapToDouble(count -> count).sum();
  }

  private Mixture beginning(Map<Pattern, Double> random) {
    return new Mixture(
        List.of(
            new PairClass(SHARES.get(SAME_PERSON), levels(Shares::samePerson)),
            new PairClass(SHARES.get(SAME_HOUSEHOLD), levels(Shares::sameHousehold)),
            new PairClass(SHARES.get(STRANGERS), new Chance(start).levels(random))));
  }

  private List<List<Double>> levels(ToDoubleFunction<Shares> of) {
    return Stream.of(Trait.values())
        .map(
            trait ->
                trait.levels().stream()
                    .map(level -> of.applyAsDouble(start.shares(trait, level)))
                    .toList())
        .toList();
  }

  private Parameters parameters(Mixture mixture, String version) {
    Map<Trait, Map<Level, Shares>> levels = new EnumMap<>(Trait.class);
    for (Trait trait : Trait.values()) {
      levels.put(trait, shares(trait, mixture.classes()));
    }
    return new Parameters(version, start.prior(), start.costs(), levels);
  }

  private static Map<Level, Shares> shares(Trait trait, List<PairClass> classes) {
    List<Double> person = levelled(classes.get(SAME_PERSON).levels().get(trait.ordinal()));
    List<Double> household = levelled(classes.get(SAME_HOUSEHOLD).levels().get(trait.ordinal()));
    List<Double> strangers = classes.get(STRANGERS).levels().get(trait.ordinal());
    Map<Level, Shares> shares = new EnumMap<>(Level.class);
    IntStream.range(0, trait.levels().size())
        .forEach(
            i ->
                shares.put(
                    trait.levels().get(i),
                    new Shares(person.get(i), household.get(i), strangers.get(i))));
    return shares;
  }

  private static List<Double> levelled(List<Double> shares) {
    double sum = shares.stream().mapToDouble(share -> Math.max(share, LEAST)).sum();
    return shares.stream().map(share -> Math.max(share, LEAST) / sum).toList();
  }
}
