package withers.contacts;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.StreamCorruptedException;
import java.nio.ByteBuffer;

/**
 * Answers of a few bits under keys of 120 bits, as many as there are people and pairs of them: two
 * longs each and no objects, parted among segments so that several threads seldom wait for each
 * other. Keys have to be spread evenly, as references are. Safe for several threads.
 */
final class AnswerTable {

  /** No answer is kept. */
  static final int NONE = 0;

  /** The part of the heap that it takes at most; beyond that nothing is added. */
  private static final int PART_OF_HEAP = 4;

  private static final int BITS = 8;
  private static final int BYTES_OF_ONE = 2 * Long.BYTES;

  // A segment grows when it is filled by more than this.
  private static final int FILLED = 3;
  private static final int OF = 4;

  private static final int ANSWER = 0xff;

  private final Segment[] segments = new Segment[1 << BITS];

  /** A table without answers, which takes at most a quarter of the heap. */
  AnswerTable() {
    this(Runtime.getRuntime().maxMemory() / PART_OF_HEAP);
  }

  /**
   * A table without answers.
   *
   * @param bytes what it takes at most, but for the least that it needs
   */
  AnswerTable(long bytes) {
    long places = Math.max(Segment.FEWEST, Long.highestOneBit((bytes >> BITS) / BYTES_OF_ONE));
    int most = (int) Math.min(Segment.MOST, places);
    for (int i = 0; i < segments.length; i++) {
      segments[i] = new Segment(most);
    }
  }

  /** The answer, 1 to 255, or {@link #NONE}. */
  int find(long high, long low) {
    return segment(high).find(high, low);
  }

  /**
   * Keeps an answer, unless there is one.
   *
   * @param answer 1 to 255
   */
  void keep(long high, long low, int answer) {
    segment(high).keep(high, low | ANSWER, answer);
  }

  private Segment segment(long high) {
    return segments[(int) (high >>> (Long.SIZE - BITS))];
  }

  /** How many answers were added since it was read. */
  long added() {
    long added = 0;
    for (Segment segment : segments) {
      added += segment.added();
    }
    return added;
  }

  /** How many answers there are. */
  long size() {
    long size = 0;
    for (Segment segment : segments) {
      size += segment.size();
    }
    return size;
  }

  /** Writes all answers. */
  void write(DataOutputStream out) throws IOException {
    for (Segment segment : segments) {
      segment.write(out);
    }
  }

  /**
   * Reads what {@link #write} wrote.
   *
   * @throws IOException when it is anything else, or can't be read
   */
  static AnswerTable read(DataInputStream in) throws IOException {
    AnswerTable table = new AnswerTable();
    for (Segment segment : table.segments) {
      segment.read(in);
    }
    return table;
  }

  /** Open addressing: a key stands at its own place, or at the next that was free. */
  private static final class Segment {
    private static final int FEWEST = 16;
    private static final int MOST = 1 << 24;

    private final int places;

    /** Pairs of longs; the second, of which the last eight bits are the answer, is 0 if free. */
    private long[] slots = new long[2 * FEWEST];

    private int size;
    private int added;

    /**
     * An empty one.
     *
     * @param places how many it has at most, a power of two
     */
    Segment(int places) {
      this.places = places;
    }

    synchronized int find(long high, long low) {
      int at = place(high, low | ANSWER);
      return (int) slots[at + 1] & ANSWER;
    }

    synchronized void keep(long high, long lowest, int answer) {
      int at = place(high, lowest);
      if (slots[at + 1] == 0 && size < (long) places * FILLED / OF) {
        slots[at] = high;
        slots[at + 1] = lowest & ~ANSWER | answer;
        size++;
        added++;
        growIfFull();
      }
    }

    /** Where a key is, or would be. */
    private int place(long high, long lowest) {
      int mask = slots.length - 2;
      int at = (int) (high << 1) & mask;
      while (slots[at + 1] != 0 && !(slots[at] == high && (slots[at + 1] | ANSWER) == lowest)) {
        at = at + 2 & mask;
      }
      return at;
    }

    private void growIfFull() {
      if (size * (long) OF > slots.length / 2 * (long) FILLED) {
        long[] before = slots;
        slots = new long[2 * before.length];
        for (int i = 0; i < before.length; i += 2) {
          if (before[i + 1] != 0) {
            int at = place(before[i], before[i + 1] | ANSWER);
            slots[at] = before[i];
            slots[at + 1] = before[i + 1];
          }
        }
      }
    }

    synchronized int size() {
      return size;
    }

    synchronized int added() {
      return added;
    }

    synchronized void write(DataOutputStream out) throws IOException {
      out.writeInt(size);
      out.writeInt(slots.length);
      ByteBuffer bytes = ByteBuffer.allocate(slots.length * Long.BYTES);
      bytes.asLongBuffer().put(slots);
      out.write(bytes.array());
    }

    synchronized void read(DataInputStream in) throws IOException {
      size = in.readInt();
      int length = in.readInt();
      if (Integer.bitCount(length) != 1 || length > 2L * places || length < 2 * FEWEST) {
        throw new StreamCorruptedException("Expected the length of a segment, but found " + length);
      }
      byte[] bytes = in.readNBytes(length * Long.BYTES);
      if (bytes.length < length * Long.BYTES) {
        throw new StreamCorruptedException("Expected a whole segment, but found its beginning");
      }
      slots = new long[length];
      ByteBuffer.wrap(bytes).asLongBuffer().get(slots);
    }
  }
}
