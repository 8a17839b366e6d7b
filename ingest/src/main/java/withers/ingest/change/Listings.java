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
  private final long[] listed;
  private final long[] missing;
  private long standing;

  private Listings(int[] days, long[] listed, long[] missing, long standing) {
    this.days = days;
    this.listed = listed;
    this.missing = missing;
    this.standing = standing;
  }

  /** No records at all. */
  static Listings none() {
    return new Listings(new int[0], new long[0], new long[0], 0);
  }

  /** The same counts, to be changed by themselves. */
  public Listings copy() {
    return new Listings(days.clone(), listed.clone(), missing.clone(), standing);
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
    long[] more = Arrays.copyOf(listed, all.length);
    Arrays.fill(more, days.length, all.length, standing);
    return new Listings(all, more, Arrays.copyOf(missing, all.length), standing);
  }

  void add(Timeline timeline) {
    count(timeline, 1);
  }

  void remove(Timeline timeline) {
    count(timeline, -1);
  }

  private void count(Timeline timeline, int one) {
    boolean[] at = timeline.listedAt(days);
    for (int i = 0; i < days.length; i++) {
      listed[i] += at[i] ? one : 0;
      missing[i] += i > 0 && at[i - 1] && !at[i] ? one : 0;
    }
    standing += timeline.isListed() ? one : 0;
  }

  List<Disappearances.Gap> gaps() {
    List<Disappearances.Gap> gaps = new ArrayList<>();
    for (int i = 1; i < days.length; i++) {
      gaps.add(Disappearances.Gap.of(days[i], listed[i - 1], missing[i]));
    }
    return gaps;
  }

  /** Writes it in a form that {@link #read} takes back. */
  public void write(DataOutput out) throws IOException {
    out.writeLong(standing);
    out.writeInt(days.length);
    for (int i = 0; i < days.length; i++) {
      out.writeInt(days[i]);
      out.writeLong(listed[i]);
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
      read.listed[i] = in.readLong();
      read.missing[i] = in.readLong();
    }
    return read;
  }
}
