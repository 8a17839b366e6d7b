package withers.run;

import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.Tally;

/**
 * Parts of the chips that are read one after another, so that what is said of a partition's chips
 * need not be in memory at once. Each slice reads the partition anew; where there is memory for
 * all, there is one.
 *
 * @param count how many, from 1
 */
record Slices(int count) {

  /** What an event takes in memory with what is made of it, at most (seen in class histograms). */
  private static final int BYTES_OF_EVENT = 350;

  /**
   * The part of the heap that all threads' events may take: a small one, since reading a partition
   * once more costs little beside judging it, and what was found needs the rest.
   */
  private static final int PART_OF_HEAP = 8;

  private static final long SPREAD = 0x9e3779b97f4a7c15L;

  /**
   * As many as this log and this JVM's heap need, if each processor reads a partition at a time.
   *
   * @param but events of a partition that are passed over
   */
  static Slices of(LogSnapshot log, long but) {
    long events = log.markers().stream().map(ImportMarker::tally).mapToLong(Tally::events).sum();
    Runtime machine = Runtime.getRuntime();
    return of(
        Math.max(0, events - but * Streams.CHIPS.partitions()),
        machine.maxMemory(),
        machine.availableProcessors());
  }

  static Slices of(long events, long heapBytes, int readers) {
    long inPartition = events / Streams.CHIPS.partitions() + 1;
    long most = Math.max(1, heapBytes / PART_OF_HEAP / readers / BYTES_OF_EVENT);
    return new Slices(Math.toIntExact((inPartition + most - 1) / most));
  }

  /** Whether a chip is of a slice, for each of them: every chip is of one. */
  Stream<Predicate<ChipNumber>> all() {
    return IntStream.range(0, count).mapToObj(slice -> chip -> of(chip) == slice);
  }

  // Not the bits that partitions are told by: a slice has its share of each partition.
  private int of(ChipNumber chip) {
    return Math.floorMod((int) (chip.packed() * SPREAD >>> Integer.SIZE), count);
  }
}
