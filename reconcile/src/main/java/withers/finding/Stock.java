package withers.finding;

import java.util.List;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;

/**
 * Numbers of a supplied range of which no record speaks.
 *
 * @param range what was supplied
 * @param first the first {@link #SHOWN} of the numbers, in natural order
 * @param unaccounted how many there are, from 1
 */
public record Stock(NumberRange range, List<ChipNumber> first, long unaccounted) implements Detail {

  /** How many numbers are named; the purchaser has the box. */
  public static final int SHOWN = 3;

  public Stock {
    first = List.copyOf(first);
  }
}
