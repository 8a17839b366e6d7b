package withers.ingest.known;

import java.util.BitSet;
import java.util.Optional;

/**
 * What one file has in common with the last export, in the order of the file: runs of recognised
 * records, each after some that were not.
 */
final class Recognition implements UnreadRecords {

  /** The place in the last export of a record that has none there. */
  static final int NOWHERE = -1;

  private final Numbers runStarts = new Numbers();
  private final Numbers runLengths = new Numbers();
  private final Numbers gaps = new Numbers(); // records not recognised before each run
  private int gap;

  private final Longs offsets = new Longs();
  private final Longs lines = new Longs();
  private final Longs firsts = new Longs();
  private final Longs seconds = new Longs();
  private final Numbers lengths = new Numbers();
  private final Numbers heights = new Numbers();
  private final Numbers places = new Numbers();
  private final Longs keyHashes = new Longs();
  private final HeldRecords held = new HeldRecords();
  private int found;
  private int lookedUp;
  private boolean endsUnrecognised;

  void run(int start, int length) {
    if (length > 0) {
      runStarts.add(start);
      runLengths.add(length);
      gaps.add(gap);
      gap = 0;
    }
  }

  void unrecognised(RecordScanner record, RecordHash hash) {
    offsets.add(record.offset());
    lines.add(record.line());
    lengths.add(record.length());
    heights.add(record.height());
    firsts.add(hash.first());
    seconds.add(hash.second());
    places.add(NOWHERE);
    keyHashes.add(0);
    held.add(record.bytes(), record.from(), record.length());
    gap++;
  }

  void end(boolean isUnrecognised, int lookedUp) {
    this.endsUnrecognised = isUnrecognised;
    this.lookedUp = lookedUp;
  }

  /** Marks every place of the last export whose record this file has. */
  void mark(BitSet marked) {
    for (int i = 0; i < runStarts.size(); i++) {
      marked.set(runStarts.get(i), runStarts.get(i) + runLengths.get(i));
    }
    for (int i = 0; i < places.size(); i++) {
      if (places.get(i) != NOWHERE) {
        marked.set(places.get(i));
      }
    }
  }

  /** Looks records that were not recognised up among those that no file had where expected. */
  void recover(OrderIndex.Some passedOver) {
    for (int i = 0; i < places.size(); i++) {
      int place = passedOver.find(firsts.get(i), seconds.get(i));
      if (place != NOWHERE) {
        places.set(i, place);
        found++;
      }
    }
  }

  /** How many records were recognised. */
  long count() {
    long count = found;
    for (int i = 0; i < runLengths.size(); i++) {
      count += runLengths.get(i);
    }
    return count;
  }

  /** How many of them were not where they were expected. */
  long lookedUp() {
    return (long) lookedUp + found;
  }

  @Override
  public int unrecognised() {
    return places.size();
  }

  @Override
  public boolean isUnread(int at) {
    return places.get(at) == NOWHERE;
  }

  boolean endsUnrecognised() {
    return endsUnrecognised && isUnread(places.size() - 1);
  }

  /** The record's bytes; empty when they have to be read again. */
  Optional<byte[]> bytes(int at) {
    return held.bytes(at, lengths.get(at));
  }

  long offset(int at) {
    return offsets.get(at);
  }

  /** Whether some of the records were found elsewhere after all. */
  boolean hasRecovered() {
    return found > 0;
  }

  int length(int at) {
    return lengths.get(at);
  }

  @Override
  public long line(int at) {
    return lines.get(at);
  }

  @Override
  public int height(int at) {
    return heights.get(at);
  }

  /** Notes what key a record turned out to have, by its hash, not 0. */
  void key(int at, long keyHash) {
    keyHashes.set(at, keyHash);
  }

  /** Takes what the new order is made of. */
  interface Parts {

    /** Records as they stand in the last order. */
    void known(int from, int count);

    /** A record that was read, and is a statement of the record with this key. */
    void read(long first, long second, long keyHash);
  }

  /** Tells the file's records in their order. */
  void tell(Parts parts) {
    int at = 0;
    for (int run = 0; run < runStarts.size(); run++) {
      int next = at + gaps.get(run);
      tell(at, next, parts);
      parts.known(runStarts.get(run), runLengths.get(run));
      at = next;
    }
    tell(at, places.size(), parts);
  }

  private void tell(int from, int to, Parts parts) {
    for (int i = from; i < to; i++) {
      if (!isUnread(i)) {
        parts.known(places.get(i), 1);
      } else if (keyHashes.get(i) != 0) {
        parts.read(firsts.get(i), seconds.get(i), keyHashes.get(i));
      }
    }
  }
}
