package withers.corpus;

import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleFunction;

/**
 * Seeded dice: java.util.Random, whose algorithm is part of its contract, so that a seed gives the
 * same pairs on any JDK.
 */
final class Dice {
  private static final double FLATNESS = 3;

  private final Random random;

  Dice(long seed) {
    this.random = new Random(seed);
  }

  int below(int bound) {
    return random.nextInt(bound);
  }

  boolean chance(double percent) {
    return random.nextDouble() * 100 < percent;
  }

  <T> T one(List<T> values) {
    return values.get(below(values.size()));
  }

  /**
   * One of these, the first most often: the frequency falls with the rank r as 1 / (r + 3), a law
   * of Zipf with its head flattened, as lists of family names have it.
   */
  <T> T byRank(List<T> values) {
    double ratio = (values.size() + FLATNESS) / FLATNESS;
    int rank = (int) (FLATNESS * StrictMath.pow(ratio, random.nextDouble()) - FLATNESS);
    return values.get(Math.min(rank, values.size() - 1));
  }

  /** One of these, as often as its weight says. */
  <T> T weighted(List<T> values, ToDoubleFunction<T> weight) {
    double point = random.nextDouble() * values.stream().mapToDouble(weight).sum();
    for (T value : values) {
      point -= weight.applyAsDouble(value);
      if (point < 0) {
        return value;
      }
    }
    return values.get(values.size() - 1);
  }
}
