package withers.ingest.known;

import java.util.Arrays;

/** A list of ints that grows. */
final class Numbers {

  private static final int FIRST = 1024;

  private int[] values = new int[FIRST];
  private int size;

  void add(int value) {
    if (size == values.length) {
      values = Arrays.copyOf(values, size + (size >> 1));
    }
    values[size++] = value;
  }

  int get(int at) {
    return values[at];
  }

  void set(int at, int value) {
    values[at] = value;
  }

  /** Where a value stands among ascending ones, as {@link Arrays#binarySearch(int[], int)} says. */
  int find(int value) {
    return Arrays.binarySearch(values, 0, size, value);
  }

  int size() {
    return size;
  }
}
