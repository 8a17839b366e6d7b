package withers.damage;

import java.util.Arrays;
import java.util.stream.LongStream;
import withers.chip.ChipNumber;
import withers.chip.LostDigits;

/** Chip numbers in order, none twice, eight bytes each. */
final class Numbers {

  /**
   * Packed numbers.
   *
   * @param from the least that may be one
   * @param to beyond the last one
   */
  record Range(long from, long to) {

    /** Those that may have been cut to these digits. */
    static Range of(LostDigits digits) {
      ChipNumber least = digits.least();
      ChipNumber most = digits.most();
      return new Range(
          least.packed() + (digits.admits(least) ? 0 : 1),
          most.packed() + (digits.admits(most) ? 1 : 0));
    }
  }

  private final long[] packed;

  private Numbers(long[] packed) {
    this.packed = packed;
  }

  /** The numbers that these are, packed, in any order. */
  static Numbers of(LongStream numbers) {
    return new Numbers(numbers.sorted().toArray());
  }

  /** How many lie in a range. */
  int count(Range range) {
    return less(range.to) - less(range.from);
  }

  /** The first that lie in a range, packed and in order. */
  LongStream first(Range range, int most) {
    int from = less(range.from);
    return Arrays.stream(packed, from, Math.min(less(range.to), from + most));
  }

  /** How many numbers are less. */
  private int less(long number) {
    int found = Arrays.binarySearch(packed, number);
    return found < 0 ? -found - 1 : found;
  }
}
