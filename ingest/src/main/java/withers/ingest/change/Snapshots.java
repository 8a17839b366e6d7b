package withers.ingest.change;

import java.time.LocalDate;
import java.util.List;
import java.util.NavigableMap;
import java.util.NavigableSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import withers.source.Extent;

/** The export dates of a source whose exports say something by silence: full ones and windows. */
final class Snapshots {

  private final NavigableSet<Integer> full = new TreeSet<>();
  private final NavigableMap<Integer, List<Extent.Window>> windows = new TreeMap<>();

  void add(LocalDate exportDate, Extent extent) {
    int day = (int) exportDate.toEpochDay();
    if (extent instanceof Extent.Full) {
      full.add(day);
    } else if (extent instanceof Extent.Window window) {
      windows.merge(day, List.of(window), (a, b) -> Stream.concat(a.stream(), b.stream()).toList());
    }
  }

  NavigableSet<Integer> full() {
    return full;
  }

  /** The newest export date of any snapshot; the earliest day there is when there is none. */
  int newest() {
    int newestFull = full.isEmpty() ? Integer.MIN_VALUE : full.last();
    return windows.isEmpty() ? newestFull : Math.max(newestFull, windows.lastKey());
  }

  boolean isFull(int day) {
    return full.contains(day);
  }

  /** The export dates of windows after this day, in order. */
  NavigableSet<Integer> windowsAfter(int day) {
    return windows.tailMap(day, false).navigableKeySet();
  }

  /** Whether a window of this export date would hold a record with any of these own days. */
  boolean windowHolds(int exportDay, List<Integer> ownDays) {
    return windows.getOrDefault(exportDay, List.of()).stream()
        .anyMatch(window -> ownDays.stream().anyMatch(own -> holds(window, own)));
  }

  static boolean holds(Extent.Window window, int ownDay) {
    return window.from().toEpochDay() <= ownDay && ownDay <= window.to().toEpochDay();
  }
}
