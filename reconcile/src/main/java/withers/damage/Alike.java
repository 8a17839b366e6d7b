package withers.damage;

import java.util.List;
import withers.chip.ChipNumber;

/**
 * Numbers that a damaged one may have been.
 *
 * @param first the first of them in natural order
 * @param count how many there are
 */
public record Alike(List<ChipNumber> first, int count) {
  public Alike {
    first = List.copyOf(first);
  }

  /** All of a few, in natural order. */
  static Alike of(List<ChipNumber> numbers) {
    return new Alike(numbers, numbers.size());
  }
}
