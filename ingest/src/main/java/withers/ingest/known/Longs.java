package withers.ingest.known;

import java.util.ArrayList;
import java.util.List;

/** A list of longs that grows page by page, and copies nothing. */
final class Longs {

  private static final int BITS = 12;
  private static final int PAGE = 1 << BITS;

  private final List<long[]> pages = new ArrayList<>();
  private int size;

  void add(long value) {
    if (size == pages.size() << BITS) {
      pages.add(new long[PAGE]);
    }
    set(size++, value);
  }

  long get(int at) {
    return pages.get(at >>> BITS)[at & PAGE - 1];
  }

  void set(int at, long value) {
    pages.get(at >>> BITS)[at & PAGE - 1] = value;
  }

  int size() {
    return size;
  }
}
