package withers.ingest;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.rows.Rows;

/**
 * Rows that are read on a thread of their own, some ahead of those that are asked for: parsing is a
 * good part of an import, and translating and comparing need not wait for it. The same rows, and
 * the same failure after the same row.
 */
final class ReadAhead implements Rows {

  private static final int MOST_ROWS = 256;
  private static final int MOST_CHARACTERS = 1 << 18; // of the rows that go together, but for one
  private static final int LOADS = 4;

  /**
   * Rows that go together.
   *
   * @param failure what came after them; empty when nothing has
   * @param isLast whether nothing will
   */
  private record Load(List<Row> rows, Optional<Throwable> failure, boolean isLast) {}

  private static final Load NOTHING = new Load(List.of(), Optional.empty(), false);

  private final Rows rows;
  private final BlockingQueue<Load> loads = new ArrayBlockingQueue<>(LOADS);
  private final Thread reader = new Thread(this::readAll, "reading ahead");
  private volatile boolean closed;
  private Load load = NOTHING;
  private int at;

  private ReadAhead(Rows rows) {
    this.rows = rows;
  }

  /**
   * Begins to read.
   *
   * @param rows closed with these
   */
  static Rows of(Rows rows) {
    ReadAhead ahead = new ReadAhead(rows);
    ahead.reader.setDaemon(true);
    ahead.reader.start();
    return ahead;
  }

  private void readAll() {
    try {
      for (boolean more = true; more && !closed; ) {
        Load next = readSome();
        loads.put(next);
        more = !next.isLast;
      }
    } catch (InterruptedException nobodyAsks) {
      Thread.currentThread().interrupt(); // closed while it waited
    }
  }

  private Load readSome() {
    List<Row> some = new ArrayList<>(MOST_ROWS);
    try {
      long characters = 0;
      while (some.size() < MOST_ROWS && characters < MOST_CHARACTERS) {
        Optional<Row> row = rows.next();
        if (row.isEmpty()) {
          return new Load(some, Optional.empty(), true);
        }
        some.add(row.get());
        characters += characters(row.get());
      }
      return new Load(some, Optional.empty(), false);
    } catch (RuntimeException | Error failure) {
      return new Load(some, Optional.of(failure), true);
    }
  }

  private static long characters(Row row) {
    long characters = 0;
    for (int i = 0; i < row.size(); i++) {
      characters += row.cell(i).length();
    }
    return characters;
  }

  @Override
  public Header header() {
    return rows.header();
  }

  @Override
  public Optional<Row> next() {
    while (at == load.rows.size()) {
      load.failure.ifPresent(ReadAhead::fail);
      if (load.isLast) {
        return Optional.empty();
      }
      load = take();
      at = 0;
    }
    return Optional.of(load.rows.get(at++));
  }

  private static void fail(Throwable failure) {
    if (failure instanceof Error error) {
      throw error;
    }
    throw (RuntimeException) failure;
  }

  private Load take() {
    try {
      return loads.take();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("The import was interrupted", e);
    }
  }

  /** As of all rows: ask after the last. */
  @Override
  public List<String> remarks() {
    return rows.remarks();
  }

  @Override
  public void close() {
    closed = true;
    reader.interrupt();
    try {
      reader.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    rows.close();
  }
}
