package withers.ingest.known;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.IntBuffer;
import java.nio.LongBuffer;
import java.nio.file.Path;

/** The hashes of an export's records in the order of the export, and which record each is. */
final class Order {

  private static final int HASH = 2 * Long.BYTES;

  private final int size;
  private final ByteBuffer bytes;
  private final LongBuffer hashes;
  private final IntBuffer numbers;

  private Order(int size, ByteBuffer bytes) {
    this.size = size;
    this.bytes = bytes;
    this.hashes = bytes.slice(0, size * HASH).order(bytes.order()).asLongBuffer();
    this.numbers =
        bytes.slice(size * HASH, size * Integer.BYTES).order(bytes.order()).asIntBuffer();
  }

  static Order open(Path folder, Stamp.Part part) throws IOException {
    ByteBuffer bytes = CacheFile.map(folder, part);
    CacheFile.require(bytes.duplicate(), part.checksum());
    return new Order(part.size(), bytes);
  }

  int size() {
    return size;
  }

  boolean is(int at, long first, long second) {
    return hashes.get(2 * at) == first && hashes.get(2 * at + 1) == second;
  }

  long first(int at) {
    return hashes.get(2 * at);
  }

  /** The number of the record, see {@link Timelines}. */
  int number(int at) {
    return numbers.get(at);
  }

  private ByteBuffer hashes(int from, int count) {
    return bytes.slice(from * HASH, count * HASH);
  }

  /** Writes another order, which may take parts of one that is there. */
  static final class Writer implements AutoCloseable {

    /** What fits into one mapping, with the numbers. */
    private static final int MOST = Integer.MAX_VALUE / (HASH + Integer.BYTES);

    private final String name;
    private final CacheFile file;
    private final Numbers numbers = new Numbers();

    Writer(Path folder, String name) throws IOException {
      this.name = name;
      this.file = new CacheFile(folder.resolve(name));
    }

    void add(long first, long second, int number) throws IOException {
      file.putLong(first);
      file.putLong(second);
      numbers.add(number);
    }

    void add(Order other, int from, int count) throws IOException {
      file.put(other.hashes(from, count));
      for (int i = from; i < from + count; i++) {
        numbers.add(other.number(i));
      }
    }

    int size() {
      return numbers.size();
    }

    Stamp.Part finish() throws IOException {
      if (numbers.size() > MOST) {
        throw new UnrecognisableException("more records than a cache can hold");
      }
      for (int i = 0; i < numbers.size(); i++) {
        file.putInt(numbers.get(i));
      }
      return new Stamp.Part(name, numbers.size(), file.length(), file.checksum());
    }

    @Override
    public void close() throws IOException {
      file.close();
    }
  }
}
