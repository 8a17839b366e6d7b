package withers.matching;

/** Weights as logarithms to base 2, and what they say about probability. */
final class Bits {
  private static final double LN_2 = Math.log(2);

  private Bits() {}

  static double log2(double factor) {
    return Math.log(factor) / LN_2;
  }

  /** 2 to the power of a weight: the odds that it stands for. */
  static double odds(double weight) {
    return Math.exp(weight * LN_2);
  }

  /** The weight of odds for and against: {@code p / (1 - p)}. */
  static double ofProbability(double probability) {
    return log2(probability / (1 - probability));
  }

  /** The probability that a weight stands for: {@code 2^w / (1 + 2^w)}. */
  static double probability(double weight) {
    return 1 / (1 + odds(-weight));
  }
}
