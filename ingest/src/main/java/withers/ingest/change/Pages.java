package withers.ingest.change;

import java.util.ArrayList;
import java.util.List;

/**
 * Room for bytes that grows page by page, so that nothing is ever copied to make more. What is
 * handed out lies in one page, is zero at first, and is never taken back by itself.
 */
final class Pages {

  private static final int BITS = 16;

  /** Small enough for a collector to move, and to be no loss when little is kept. */
  static final int SIZE = 1 << BITS;

  private static final byte[] NOTHING = {};

  private final List<byte[]> pages = new ArrayList<>();
  private int used = SIZE; // of the last page

  /** Hands out so many bytes, and tells their address. What is longer than a page has its own. */
  long add(int length) {
    if (length > SIZE - used) {
      pages.add(new byte[Math.max(SIZE, length)]);
      used = 0;
    }
    long address = end();
    used += length;
    return address;
  }

  /** The address behind all that was handed out; later ones are no less. */
  long end() {
    return pages.isEmpty() ? 0 : start(pages.size() - 1) + Math.min(used, SIZE);
  }

  /** The address of a page's first byte. */
  static long start(int page) {
    return (long) page << BITS;
  }

  byte[] page(long address) {
    return pages.get((int) (address >>> BITS));
  }

  static int offset(long address) {
    return (int) address & SIZE - 1;
  }

  /** Gives a page back to the collector. Nobody may ask for it any more. */
  void release(int page) {
    pages.set(page, NOTHING);
  }

  int count() {
    return pages.size();
  }
}
