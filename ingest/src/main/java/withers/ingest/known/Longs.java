package withers.ingest.known;

import java.util.Arrays;

/** A list of longs that grows. */
final class Longs {

  private static final int FIRST = 1024;

  private long[] values = new long[FIRST];
  private int size;

  void add(long value) {
    if (size == values.length) {
      values = Arrays.copyOf(values, size + (size >> 1));
    }
    values[size++] = value;
  }

  long get(int at) {
    return values[at];
  }

  void set(int at, long value) {
    values[at] = value;
  }

  int size() {
    return size;
  }
}
