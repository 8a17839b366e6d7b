package withers.supply;

import java.util.Arrays;
import java.util.List;
import java.util.NavigableSet;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;

/**
 * Ranges that may overlap, cut into runs of numbers that all lie in the same ones, so that one
 * search finds the last range of a number. Immutable; safe for several threads.
 */
final class RangeIndex {
  private static final int NONE = -1;

  private final long[] starts;
  private final int[] last;

  /**
   * @param ranges of several that contain a number, the last one counts
   */
  RangeIndex(List<NumberRange> ranges) {
    SortedMap<Long, Set<Integer>> turns = turns(ranges);
    starts = new long[turns.size()];
    last = new int[turns.size()];
    NavigableSet<Integer> inside = new TreeSet<>();
    int run = 0;
    for (var turn : turns.entrySet()) {
      turn.getValue().forEach(range -> enterOrLeave(range, inside));
      starts[run] = turn.getKey();
      last[run] = inside.isEmpty() ? NONE : inside.last();
      run++;
    }
  }

  /** Where ranges start, and the first numbers behind them, with the ranges that do. */
  private static SortedMap<Long, Set<Integer>> turns(List<NumberRange> ranges) {
    SortedMap<Long, Set<Integer>> turns = new TreeMap<>();
    for (int i = 0; i < ranges.size(); i++) {
      NumberRange range = ranges.get(i);
      turns.computeIfAbsent(range.first().packed(), at -> new TreeSet<>()).add(i);
      turns.computeIfAbsent(range.last().packed() + 1, at -> new TreeSet<>()).add(i);
    }
    return turns;
  }

  private static void enterOrLeave(int range, Set<Integer> inside) {
    if (!inside.add(range)) {
      inside.remove(range);
    }
  }

  /** The place of the last range that contains the number. */
  OptionalInt last(ChipNumber number) {
    int found = Arrays.binarySearch(starts, number.packed());
    int run = found < 0 ? -found - 2 : found;
    return run < 0 || last[run] == NONE ? OptionalInt.empty() : OptionalInt.of(last[run]);
  }

  /** Whether any range contains the number. */
  boolean contains(ChipNumber number) {
    return last(number).isPresent();
  }
}
