package withers.matching;

import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * How often strangers agree by chance, counted on random pairs. What random pairs are too few to
 * show keeps the share that it has.
 *
 * @param known what is known before counting
 */
record Chance(Parameters known) {

  /** From as many pairs on, a level's share is taken from the count (our judgement). */
  private static final double ENOUGH = 10;

  List<List<Double>> levels(Map<Pattern, Double> random) {
    return Stream.of(Trait.values()).map(trait -> levels(trait, random)).toList();
  }

  /** The last level, that nothing agrees, has what the others leave. */
  private List<Double> levels(Trait trait, Map<Pattern, Double> random) {
    double[] counts = counts(trait, random);
    double stated = sum(counts, counts.length);
    double[] shares = new double[counts.length];
    int last = counts.length - 1;
    for (int i = 0; i < last; i++) {
      double before = known.shares(trait, trait.levels().get(i)).strangers();
      shares[i] = counts[i] < ENOUGH ? before : counts[i] / stated;
    }
    shares[last] = 1 - sum(shares, last);
    return IntStream.range(0, shares.length).mapToObj(i -> shares[i]).toList();
  }

  private static double[] counts(Trait trait, Map<Pattern, Double> random) {
    double[] counts = new double[trait.levels().size()];
    random.forEach(
        (pattern, count) -> {
          int level = pattern.level(trait.ordinal());
          if (level != Pattern.MISSING) {
            counts[level] += count;
          }
        });
    return counts;
  }

  private static double sum(double[] numbers, int end) {
    return IntStream.range(0, end).mapToDouble(i -> numbers[i]).sum();
  }
}
