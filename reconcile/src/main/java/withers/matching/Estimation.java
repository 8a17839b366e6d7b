package withers.matching;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Estimates a mixture from pairs of which nobody knows the truth, by expectation maximisation
 * (Dempster, Laird and Rubin, JRSS B 39, 1977). Pure.
 *
 * @param fixed the numbers of the classes whose levels stay as they are, since they are known
 *     otherwise; their share is estimated
 * @param smallestChange it has converged when no share changes by more than this in a round
 * @param mostRounds after which it gives up
 */
public record Estimation(Set<Integer> fixed, double smallestChange, int mostRounds) {

  /** So often is a level met that was not, so that nothing is held to be impossible. */
  private static final double NEVER_NONE = 1e-12;

  /**
   * What came out.
   *
   * @param converged whether the last round changed nothing of account
   * @param logLikelihood after each round; it never falls
   */
  public record Estimate(Mixture mixture, boolean converged, List<Double> logLikelihood) {
    public Estimate {
      logLikelihood = List.copyOf(logLikelihood);
    }

    public int rounds() {
      return logLikelihood.size();
    }
  }

  public Estimation {
    fixed = Set.copyOf(fixed);
  }

  /**
   * Estimates.
   *
   * @param pairs how many pairs, or what share of them, have each pattern
   * @param start where to begin; a fixed class keeps its levels
   */
  public Estimate estimate(Map<Pattern, Double> pairs, Mixture start) {
    List<Double> likelihoods = new ArrayList<>();
    Mixture now = start;
    boolean converged = false;
    while (!converged && likelihoods.size() < mostRounds) {
      Mixture next = round(pairs, now);
      converged = Changes.largest(now, next) <= smallestChange;
      now = next;
      likelihoods.add(logLikelihood(pairs, now));
    }
    return new Estimate(now, converged, likelihoods);
  }

  private Mixture round(Map<Pattern, Double> pairs, Mixture now) {
    List<Expected> expected = now.classes().stream().map(Expected::like).toList();
    pairs.forEach((pattern, count) -> share(pattern, count, now, expected));
    double all = expected.stream().mapToDouble(one -> one.pairs).sum();
    return new Mixture(
        IntStream.range(0, expected.size())
            .mapToObj(i -> expected.get(i).maximised(all, now.classes().get(i), fixed.contains(i)))
            .toList());
  }

  private static void share(Pattern pattern, double count, Mixture now, List<Expected> expected) {
    double probability = now.probability(pattern);
    for (int i = 0; i < expected.size(); i++) {
      double part = count * now.classes().get(i).joint(pattern) / probability;
      expected.get(i).add(pattern, part);
    }
  }

  private static double logLikelihood(Map<Pattern, Double> pairs, Mixture mixture) {
    return pairs.entrySet().stream()
        .mapToDouble(entry -> entry.getValue() * Math.log(mixture.probability(entry.getKey())))
        .sum();
  }

  /** How many pairs of one class are to be expected, all and by trait and level. */
  private static final class Expected {
    private final double[][] byLevel;
    private double pairs;

    private Expected(double[][] byLevel) {
      this.byLevel = byLevel;
    }

    static Expected like(Mixture.PairClass one) {
      return new Expected(
          one.levels().stream().map(l -> new double[l.size()]).toArray(double[][]::new));
    }

    void add(Pattern pattern, double part) {
      pairs += part;
      for (int trait = 0; trait < byLevel.length; trait++) {
        int level = pattern.level(trait);
        if (level != Pattern.MISSING) {
          byLevel[trait][level] += part;
        }
      }
    }

    Mixture.PairClass maximised(double all, Mixture.PairClass before, boolean fixed) {
      List<List<Double>> levels = new ArrayList<>();
      for (int trait = 0; trait < byLevel.length; trait++) {
        levels.add(fixed ? before.levels().get(trait) : shares(byLevel[trait], before, trait));
      }
      return new Mixture.PairClass(pairs / all, levels);
    }

    private static List<Double> shares(double[] counts, Mixture.PairClass before, int trait) {
      double stated = IntStream.range(0, counts.length).mapToDouble(i -> counts[i]).sum();
      return stated == 0
          ? before.levels().get(trait)
          : IntStream.range(0, counts.length)
              .mapToObj(i -> Math.max(counts[i] / stated, NEVER_NONE))
              .toList();
    }
  }

  /** How much two mixtures of one shape differ. */
  private static final class Changes {
    static double largest(Mixture one, Mixture other) {
      return IntStream.range(0, one.classes().size())
          .mapToDouble(i -> largest(one.classes().get(i), other.classes().get(i)))
          .max()
          .orElse(0);
    }

    private static double largest(Mixture.PairClass one, Mixture.PairClass other) {
      double change = Math.abs(one.share() - other.share());
      for (int trait = 0; trait < one.levels().size(); trait++) {
        change = Math.max(change, largest(one.levels().get(trait), other.levels().get(trait)));
      }
      return change;
    }

    private static double largest(List<Double> one, List<Double> other) {
      return IntStream.range(0, one.size())
          .mapToDouble(i -> Math.abs(one.get(i) - other.get(i)))
          .max()
          .orElse(0);
    }
  }
}
