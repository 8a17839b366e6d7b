package withers.ingest.known;

import java.util.ArrayList;
import java.util.List;

/** A list of ints that grows page by page, and copies nothing. */
final class Numbers {

  private static final int BITS = 12;
  private static final int PAGE = 1 << BITS;

  private final List<int[]> pages = new ArrayList<>();
  private int size;

  void add(int value) {
    if (size == pages.size() << BITS) {
      pages.add(new int[PAGE]);
    }
    set(size++, value);
  }

  int get(int at) {
    return pages.get(at >>> BITS)[at & PAGE - 1];
  }

  void set(int at, int value) {
    pages.get(at >>> BITS)[at & PAGE - 1] = value;
  }

  /**
   * Where a value stands among ascending ones, as {@link java.util.Arrays#binarySearch(int[], int)}
   * says.
   */
  int find(int value) {
    int low = 0;
    int high = size - 1;
    while (low <= high) {
      int middle = low + high >>> 1;
      int found = get(middle);
      if (found == value) {
        return middle;
      }
      if (found < value) {
        low = middle + 1;
      } else {
        high = middle - 1;
      }
    }
    return -(low + 1);
  }

  int size() {
    return size;
  }
}
