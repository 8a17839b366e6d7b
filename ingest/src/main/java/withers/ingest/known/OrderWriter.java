package withers.ingest.known;

import java.io.IOException;

/** Writes a file of an order, entry by entry. */
final class OrderWriter implements AutoCloseable {

  /** What fits into one mapping, with the numbers. */
  private static final int MOST = Integer.MAX_VALUE / Order.ENTRY;

  private final String name;
  private final CacheFile file;
  private final Numbers numbers = new Numbers();

  OrderWriter(Cache cache) throws IOException {
    this.name = cache.newName("order");
    this.file = new CacheFile(cache.folder().resolve(name));
  }

  void add(long first, long second, int number) throws IOException {
    file.putLong(first);
    file.putLong(second);
    numbers.add(number);
  }

  /** Adds entries of the file that another order goes back to. */
  void add(Order other, int from, int count) throws IOException {
    file.put(other.fileHashes(from, count));
    for (int i = from; i < from + count; i++) {
      numbers.add(other.fileNumber(i));
    }
  }

  /** How many entries there are so far. */
  int size() {
    return numbers.size();
  }

  Stamp.Part finish() throws IOException {
    return finish(new OrderParts());
  }

  /**
   * @param parts of an order whose fresh entries these are
   */
  Stamp.Part finish(OrderParts parts) throws IOException {
    if (numbers.size() > MOST) {
      throw new UnrecognisableException("more records than a cache can hold");
    }
    for (int i = 0; i < numbers.size(); i++) {
      file.putInt(numbers.get(i));
    }
    parts.write(file);
    return new Stamp.Part(name, numbers.size(), file.length(), file.checksum());
  }

  @Override
  public void close() throws IOException {
    file.close();
  }
}
