package withers.ingest.known;

import java.io.IOException;
import java.nio.IntBuffer;

/**
 * What an order is made of, one after another: entries of a file of an earlier order, and fresh
 * ones that stand elsewhere.
 */
final class OrderParts {

  /** Bytes of a part. */
  static final int ENTRY = 2 * Integer.BYTES;

  private final Numbers starts = new Numbers(); // places
  private final Numbers ats = new Numbers(); // in the file from 0; of the fresh ones, -1 and down
  private int size;

  /** A file as it is. */
  static OrderParts whole(int size) {
    OrderParts parts = new OrderParts();
    parts.add(0, size, false);
    return parts;
  }

  /** Adds entries, at the end. */
  void add(int at, int count, boolean isFresh) {
    if (count > 0 && !continues(at, isFresh)) {
      starts.add(size);
      ats.add(isFresh ? ~at : at);
    }
    size += count;
  }

  private boolean continues(int at, boolean isFresh) {
    int last = count() - 1;
    return last >= 0 && isFresh(last) == isFresh && at(last) + length(last) == at;
  }

  /** How many places there are. */
  int size() {
    return size;
  }

  /** How many parts. */
  int count() {
    return starts.size();
  }

  /** The part with this place, which may be the likely one. */
  int find(int place, int likely) {
    if (likely < count() && start(likely) <= place && place < start(likely) + length(likely)) {
      return likely;
    }
    int found = starts.find(place);
    return found >= 0 ? found : -found - 2;
  }

  int start(int part) {
    return starts.get(part);
  }

  int length(int part) {
    return (part + 1 < count() ? starts.get(part + 1) : size) - starts.get(part);
  }

  /** Where the part begins in its file. */
  int at(int part) {
    return isFresh(part) ? ~ats.get(part) : ats.get(part);
  }

  boolean isFresh(int part) {
    return ats.get(part) < 0;
  }

  void write(CacheFile file) throws IOException {
    for (int part = 0; part < count(); part++) {
      file.putInt(ats.get(part));
      file.putInt(length(part));
    }
  }

  static OrderParts read(IntBuffer in) {
    OrderParts parts = new OrderParts();
    while (in.hasRemaining()) {
      int at = in.get();
      parts.add(at < 0 ? ~at : at, in.get(), at < 0);
    }
    return parts;
  }
}
