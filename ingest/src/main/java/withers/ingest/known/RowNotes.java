package withers.ingest.known;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import withers.workspace.OwnerOnly;

/**
 * What is noted of each row of an export until all are read: of many rows in a file that goes with
 * these notes, since a large source has more of them than memory should hold. For one thread.
 */
final class RowNotes implements AutoCloseable {

  private static final int ENTRY = 3 * Long.BYTES;

  /** Notes of some thirty thousand rows: as many as a file is not worth. */
  private static final int ROOM = ENTRY << 15;

  private final Cache cache;
  private final ByteBuffer last = ByteBuffer.allocate(ROOM);
  private Optional<FileChannel> file = Optional.empty();
  private int size;

  /** Takes the notes of a row. */
  @FunctionalInterface
  interface Visitor {

    /**
     * One row.
     *
     * @param row how many came before it
     * @param first half of the hash of its bytes
     * @param second the other half
     * @param keyHash of its key
     */
    void on(int row, long first, long second, long keyHash) throws IOException;
  }

  /** No notes yet. */
  RowNotes(Cache cache) {
    this.cache = cache;
  }

  void add(long first, long second, long keyHash) throws IOException {
    if (!last.hasRemaining()) {
      spill();
    }
    last.putLong(first).putLong(second).putLong(keyHash);
    size++;
  }

  private void spill() throws IOException {
    if (file.isEmpty()) {
      file = Optional.of(open());
    }
    last.flip();
    while (last.hasRemaining()) {
      file.get().write(last);
    }
    last.clear();
  }

  private FileChannel open() throws IOException {
    return OwnerOnly.open(
        cache.folder().resolve(cache.newName("rows")),
        StandardOpenOption.CREATE_NEW,
        StandardOpenOption.READ,
        StandardOpenOption.WRITE,
        StandardOpenOption.DELETE_ON_CLOSE);
  }

  /** How many rows there are. */
  int size() {
    return size;
  }

  /** Shows all, in the order in which they came. */
  void forEach(Visitor visitor) throws IOException {
    ByteBuffer some = ByteBuffer.allocate(ROOM);
    int row = 0;
    for (long at = 0; at < inFile(); at += ROOM) {
      read(at, some.clear());
      row = show(row, some.flip(), visitor);
    }
    show(row, last.duplicate().flip(), visitor);
  }

  /** Bytes of the notes that are in a file. */
  long inFile() throws IOException {
    return file.isPresent() ? file.get().size() : 0;
  }

  private void read(long at, ByteBuffer into) throws IOException {
    while (into.hasRemaining()) {
      if (file.orElseThrow().read(into, at + into.position()) < 0) {
        throw new UnrecognisableException("a cache's file of another length");
      }
    }
  }

  private static int show(int from, ByteBuffer notes, Visitor visitor) throws IOException {
    int row = from;
    while (notes.hasRemaining()) {
      visitor.on(row++, notes.getLong(), notes.getLong(), notes.getLong());
    }
    return row;
  }

  @Override
  public void close() throws IOException {
    if (file.isPresent()) {
      file.get().close();
    }
  }
}
