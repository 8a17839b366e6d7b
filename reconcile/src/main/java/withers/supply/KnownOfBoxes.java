package withers.supply;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;
import withers.finding.Stock;

/** Numbers that records speak of, in order, so that a range's are counted by two searches. */
final class KnownOfBoxes {
  private final long[] numbers;
  private final List<TakenBack> takenBack;

  /**
   * @param packed in any order, repeated or not
   * @param takenBack of which all was taken back; those that others still speak of, too
   */
  KnownOfBoxes(LongStream packed, Stream<TakenBack> takenBack) {
    this.numbers = packed.sorted().distinct().toArray();
    this.takenBack = takenBack.filter(one -> !isKnown(one.number())).toList();
  }

  private boolean isKnown(ChipNumber number) {
    return Arrays.binarySearch(numbers, number.packed()) >= 0;
  }

  /** When all was taken back that had been said of numbers of a range. */
  Stream<LocalDate> takenBack(NumberRange range) {
    return takenBack.stream().filter(one -> range.contains(one.number())).map(TakenBack::on);
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
