package withers.ingest.known;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.IntBuffer;
import java.nio.LongBuffer;
import java.nio.file.Path;
import java.util.Optional;

/**
 * The hashes of an export's records in the order of the export, and which record each is: parts of
 * a file of an earlier order, and between them entries of a small file of what has changed since.
 */
final class Order {

  private static final int HASH = 2 * Long.BYTES;

  /** Bytes of a hash and a number. */
  static final int ENTRY = HASH + Integer.BYTES;

  /** Entries of a file: all hashes, then all numbers. */
  private record Entries(LongBuffer hashes, IntBuffer numbers) {

    static Entries of(ByteBuffer bytes, int size) {
      return new Entries(
          bytes.slice(0, size * HASH).order(bytes.order()).asLongBuffer(),
          ints(bytes, size * HASH, size));
    }

    static IntBuffer ints(ByteBuffer bytes, int from, int size) {
      return bytes.slice(from, size * Integer.BYTES).order(bytes.order()).asIntBuffer();
    }
  }

  private final ByteBuffer baseBytes;
  private final Entries base;
  private final Entries fresh;
  private final OrderParts parts;

  private Order(ByteBuffer baseBytes, Entries base, Entries fresh, OrderParts parts) {
    this.baseBytes = baseBytes;
    this.base = base;
    this.fresh = fresh;
    this.parts = parts;
  }

  /**
   * Opens an order.
   *
   * @param changes what has changed since the file was written
   * @throws UnrecognisableException when a file is damaged
   */
  static Order open(Path folder, Stamp.Part file, Optional<Stamp.Part> changes) throws IOException {
    ByteBuffer bytes = bytes(folder, file);
    Entries base = Entries.of(bytes, file.size());
    if (changes.isEmpty()) {
      return new Order(bytes, base, base, OrderParts.whole(file.size()));
    }
    int size = changes.get().size();
    ByteBuffer more = bytes(folder, changes.get());
    IntBuffer parts = Entries.ints(more, size * ENTRY, rest(more, size));
    return new Order(bytes, base, Entries.of(more, size), OrderParts.read(parts));
  }

  private static ByteBuffer bytes(Path folder, Stamp.Part file) throws IOException {
    ByteBuffer bytes = CacheFile.map(folder, file);
    CacheFile.require(bytes.duplicate(), file.checksum());
    return bytes;
  }

  private static int rest(ByteBuffer bytes, int size) {
    return bytes.capacity() / Integer.BYTES - size * (ENTRY / Integer.BYTES);
  }

  int size() {
    return parts.size();
  }

  /** How many entries the file has that it goes back to. */
  int fileSize() {
    return base.numbers.capacity();
  }

  /** What it is made of. */
  OrderParts parts() {
    return parts;
  }

  /** Hashes of the file that it goes back to, as they are stored. */
  ByteBuffer fileHashes(int from, int count) {
    return baseBytes.slice(from * HASH, count * HASH);
  }

  int fileNumber(int at) {
    return base.numbers.get(at);
  }

  Cursor cursor() {
    return new Cursor();
  }

  /** Looks at entries, fastest at one near the last. For one thread; places are those there are. */
  final class Cursor {

    private LongBuffer hashes = base.hashes;
    private IntBuffer numbers = base.numbers;
    private int part = -1;
    private int from;
    private int to;
    private int shift;

    boolean is(int place, long first, long second) {
      int at = 2 * at(place);
      return hashes.get(at) == first && hashes.get(at + 1) == second;
    }

    long first(int place) {
      int at = 2 * at(place);
      return hashes.get(at);
    }

    long second(int place) {
      int at = 2 * at(place);
      return hashes.get(at + 1);
    }

    /** The number of the record, see {@link TimelineFiles}. */
    int number(int place) {
      int at = at(place);
      return numbers.get(at);
    }

    private int at(int place) {
      if (place < from || place >= to) {
        seek(place);
      }
      return place - shift;
    }

    private void seek(int place) {
      part = parts.find(place, part + 1);
      from = parts.start(part);
      to = from + parts.length(part);
      shift = from - parts.at(part);
      Entries entries = parts.isFresh(part) ? fresh : base;
      hashes = entries.hashes;
      numbers = entries.numbers;
    }
  }
}
