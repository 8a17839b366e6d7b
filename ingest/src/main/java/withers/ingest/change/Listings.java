package withers.ingest.change;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.NavigableSet;

/**
 * How many records each full export of a source lists, and how many it misses that the full export
 * before it listed. Sums over records, so that one record's part can be taken out and put back.
 */
public final class Listings {

  private final int[] days;
  private final long[] more; // records listed than by the full export before
  private final long[] missing;
  private long standing;

  private Listings(int[] days, long[] more, long[] missing, long standing) {
    this.days = days;
    this.more = more;
    this.missing = missing;
    this.standing = standing;
  }

  /** No records at all. */
  static Listings none() {
    return new Listings(new int[0], new long[0], new long[0], 0);
  }

  /** The same counts, to be changed by themselves. */
  public Listings copy() {
    return new Listings(days.clone(), more.clone(), missing.clone(), standing);
  }

  /**
   * The same records, counted at these days: those that were counted already, and later ones at
   * which the records stand as they last stood.
   */
  Listings at(NavigableSet<Integer> fullDays) {
    int[] all = fullDays.stream().mapToInt(day -> day).toArray();
    if (days.length > 0 && !Arrays.equals(days, Arrays.copyOf(all, days.length))) {
      throw new IllegalStateException("Expected later days only, but found others");
    }
    long[] longer = Arrays.copyOf(more, all.length);
    if (all.length > days.length) {
      longer[days.length] = standing - Arrays.stream(more).sum();
    }
    return new Listings(all, longer, Arrays.copyOf(missing, all.length), standing);
  }

  void add(Timeline timeline) {
    count(timeline, 1);
  }

  void remove(Timeline timeline) {
    count(timeline, -1);
  }

  /**
   * A record that nothing is told of stands as it stood: there are many exports, and few points.
   */
  private void count(Timeline timeline, int one) {
    int[] points = timeline.days();
    boolean[] listed = timeline.listedAt(points);
    boolean wasListed = false;
    for (int i = 0; i < points.length; i++) {
      int at = firstFrom(points[i]);
      boolean isLastBefore = i + 1 == points.length || firstFrom(points[i + 1]) > at;
      if (isLastBefore && at < days.length && listed[i] != wasListed) {
        more[at] += listed[i] ? one : -one;
        missing[at] += wasListed ? one : 0;
        wasListed = listed[i];
      }
    }
    standing += timeline.isListed() ? one : 0;
  }

  /** The place of the first full export of this day or a later one. */
  private int firstFrom(int day) {
    int found = Arrays.binarySearch(days, day);
    return found >= 0 ? found : -found - 1;
  }

  List<Disappearances.Gap> gaps() {
    List<Disappearances.Gap> gaps = new ArrayList<>();
    long listed = 0;
    for (int i = 1; i < days.length; i++) {
      listed += more[i - 1];
      gaps.add(Disappearances.Gap.of(days[i], listed, missing[i]));
    }
    return gaps;
  }

  /** Writes it in a form that {@link #read} takes back. */
  public void write(DataOutput out) throws IOException {
    out.writeLong(standing);
    out.writeInt(days.length);
    for (int i = 0; i < days.length; i++) {
      out.writeInt(days[i]);
      out.writeLong(more[i]);
      out.writeLong(missing[i]);
    }
  }

  /** Takes back what {@link #write} wrote. */
  public static Listings read(DataInput in) throws IOException {
    long standing = in.readLong();
    int size = in.readInt();
    Listings read = new Listings(new int[size], new long[size], new long[size], standing);
    for (int i = 0; i < size; i++) {
      read.days[i] = in.readInt();
      read.more[i] = in.readLong();
      read.missing[i] = in.readLong();
    }
    return read;
  }
}
