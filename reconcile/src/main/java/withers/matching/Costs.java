package withers.matching;

/**
 * What mistakes cost, in units of leaving a pair open: the thresholds follow from it.
 *
 * @param wronglyOne taking two people for one: nobody looks for the animal's keeper
 * @param wronglyTwo taking one person for two: a follow-up that annoys
 */
public record Costs(double wronglyOne, double wronglyTwo) {
  private static final double MOST = 10_000;

  public Costs {
    require(wronglyOne);
    require(wronglyTwo);
    if (1 / wronglyOne + 1 / wronglyTwo >= 1) {
      throw new IllegalArgumentException(
          "Expected costs that leave something open (1 / wrongly-one + 1 / wrongly-two below 1), but found %s and %s"
              .formatted(wronglyOne, wronglyTwo));
    }
  }

  private static void require(double cost) {
    if (!(cost > 1 && cost <= MOST)) {
      throw new IllegalArgumentException(
          "Expected a cost above 1 and up to %.0f, but found %s".formatted(MOST, cost));
    }
  }

  /** From this probability on it is cheaper to say "one person" than to leave it open. */
  public double leastForOne() {
    return 1 - 1 / wronglyOne;
  }

  /** Up to this probability it is cheaper to say "two people" than to leave it open. */
  public double mostForTwo() {
    return 1 / wronglyTwo;
  }
}
