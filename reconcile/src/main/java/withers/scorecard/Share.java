package withers.scorecard;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;

/**
 * A part of a whole, exact.
 *
 * @param part from 0 to the whole
 */
public record Share(long part, long whole) {
  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

  public Share {
    if (part < 0 || part > whole) {
      throw new IllegalArgumentException(
          "Expected a part of %d, but found %d".formatted(whole, part));
    }
  }

  /** Whether it is at least so many percent; of nothing, it isn't told and so it is not. */
  public boolean isAtLeast(BigDecimal percent) {
    return whole > 0 && hundredfold().compareTo(of(percent)) >= 0;
  }

  /** Whether it is at most so many percent; of nothing, it is. */
  public boolean isAtMost(BigDecimal percent) {
    return hundredfold().compareTo(of(percent)) <= 0;
  }

  private BigDecimal hundredfold() {
    return HUNDRED.multiply(BigDecimal.valueOf(part));
  }

  private BigDecimal of(BigDecimal percent) {
    return percent.multiply(BigDecimal.valueOf(whole));
  }

  /**
   * In percent with one decimal; empty of nothing.
   *
   * @param rounding down for what should be high and up for what should be low: a share that misses
   *     a limit is never shown as if it kept it
   */
  public Optional<BigDecimal> percent(RoundingMode rounding) {
    return whole == 0
        ? Optional.empty()
        : Optional.of(hundredfold().divide(BigDecimal.valueOf(whole), 1, rounding));
  }
}
