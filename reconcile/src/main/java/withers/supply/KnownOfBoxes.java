package withers.supply;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.LongStream;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;
import withers.finding.Stock;

/** Numbers that records speak of, in order, so that a range's are counted by two searches. */
final class KnownOfBoxes {
  private final long[] numbers;

  /**
   * @param packed in any order, repeated or not
   */
  KnownOfBoxes(LongStream packed) {
    this.numbers = packed.sorted().distinct().toArray();
  }

  /** How many numbers of a range are known. */
  long count(NumberRange range) {
    return (long) before(range.last().packed() + 1) - before(range.first().packed());
  }

  /** The first few numbers of a range that are not known, in natural order. */
  List<ChipNumber> firstMissing(NumberRange range) {
    List<ChipNumber> missing = new ArrayList<>(Stock.SHOWN);
    int next = before(range.first().packed());
    for (long at = range.first().packed();
        at <= range.last().packed() && missing.size() < Stock.SHOWN;
        at++) {
      if (next < numbers.length && numbers[next] == at) {
        next++;
      } else {
        missing.add(ChipNumber.ofPacked(at));
      }
    }
    return missing;
  }

  /** How many known numbers are less. */
  private int before(long packed) {
    int found = Arrays.binarySearch(numbers, packed);
    return found < 0 ? -found - 1 : found;
  }
}
