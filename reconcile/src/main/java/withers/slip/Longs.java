package withers.slip;

import java.util.Arrays;

/** Longs one after another. For one thread. */
final class Longs {
  private long[] longs = {};
  private int size;

  void add(long... some) {
    if (size + some.length > longs.length) {
      longs = Arrays.copyOf(longs, Math.max(size + some.length, longs.length * 3 / 2));
    }
    System.arraycopy(some, 0, longs, size, some.length);
    size += some.length;
  }

  long[] all() {
    return Arrays.copyOf(longs, size);
  }
}
