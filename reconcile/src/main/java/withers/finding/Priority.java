package withers.finding;

import java.util.List;

/**
 * How urgent a finding is.
 *
 * @param harm expected harm in millionths, so that order never depends on floating point
 * @param arithmetic the factors behind it, in order of multiplication
 */
public record Priority(Band band, long harm, List<Factor> arithmetic) {
  public Priority {
    arithmetic = List.copyOf(arithmetic);
  }

  /**
   * One factor of the product.
   *
   * @param name stable name, explained in docs/priorities.md
   * @param millionths its value in millionths
   */
  public record Factor(String name, long millionths) {}
}
