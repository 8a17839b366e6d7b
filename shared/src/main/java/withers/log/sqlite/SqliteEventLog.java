package withers.log.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import withers.codec.Streams;
import withers.id.ImportId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.LogStream;
import withers.log.StaleParentException;
import withers.sqlite.SqliteFile;
import withers.sqlite.Upgrading;

/**
 * The embedded log: one SQLite file, readable by its owner alone. Batches are cut into chunks of
 * about a thousand events, each compressed and with a checksum over its bytes and its place.
 * Several programs may have it open; each append and each commit is a short transaction, synced to
 * disk.
 */
public final class SqliteEventLog implements EventLog {

  /** Smaller chunks cost disk, larger ones gain little. */
  static final int CHUNK = 1000;

  private final SqliteFile file;
  private final Connection writer;
  private final ChipFilters filters;

  /** What was read of the markers so far: they are never changed, only added to. */
  private List<Committed> markers = List.of();

  private boolean closed;

  private SqliteEventLog(SqliteFile file, Connection writer, ChipFilters filters) {
    this.file = file;
    this.writer = writer;
    this.filters = filters;
  }

  /**
   * Opens the log, which begins empty when there is no file.
   *
   * @throws withers.log.LogUnavailableException when the file is another program's, newer than this
   *     program, begun with other partitions, in use, or can't be written
   * @throws withers.log.LogDamagedException when SQLite finds it damaged
   */
  public static SqliteEventLog open(Path path) {
    return open(path, Upgrading.REFUSED, ChipFilters.NONE);
  }

  /**
   * Opens the log as {@link #open(Path)} does.
   *
   * @param upgrading what stands around bringing up a log that an older program wrote
   * @param filters are made for what is appended, and spare reading all for a few chips; this log's
   *     alone
   */
  public static SqliteEventLog open(Path path, Upgrading upgrading, ChipFilters filters) {
    return open(new SqliteFile(path, LogSchema.FORMAT, upgrading), filters);
  }

  static SqliteEventLog open(SqliteFile file, ChipFilters filters) {
    Connection writer = file.openForWriting();
    SqliteEventLog log = new SqliteEventLog(file, writer, filters);
    try {
      file.writing(writer, log::registerStreams);
      return log;
    } catch (RuntimeException e) {
      log.close();
      throw e;
    }
  }

  private boolean registerStreams() throws SQLException {
    for (LogStream<?> stream : Streams.all()) {
      StreamTable.register(writer, stream);
    }
    return true;
  }

  @Override
  public <E> void append(Batch<E> batch) {
    appendAll(List.of(batch));
  }

  @Override
  public void appendAll(List<? extends Batch<?>> batches) {
    prepare(batches).append();
  }

  @Override
  public Appending prepare(List<? extends Batch<?>> batches) {
    List<Encoded> chunks =
        batches.parallelStream().flatMap(batch -> chunks(batch).stream()).toList();
    Set<ImportId> imports = batches.stream().map(Batch::importId).collect(Collectors.toSet());
    Set<LogStream<?>> streams =
        batches.stream().<LogStream<?>>map(Batch::stream).collect(Collectors.toSet());
    return () -> append(imports, streams, chunks); // bytes alone: events take many times the room
  }

  /** A chunk, and which chips it speaks of where that is worth having. */
  private record Encoded(Chunk chunk, Optional<ChipFilter> filter) {}

  private synchronized void append(
      Set<ImportId> imports, Set<LogStream<?>> streams, List<Encoded> chunks) {
    writing(
        () -> {
          for (ImportId id : imports) {
            requireUncommitted(id);
          }
          for (LogStream<?> stream : streams) {
            StreamTable.register(writer, stream);
          }
          ChunkTable.insert(writer, chunks.stream().map(Encoded::chunk).toList());
          return chunks;
        });
    chunks.forEach(one -> one.filter.ifPresent(filter -> filters.add(one.chunk, filter)));
  }

  private <E> List<Encoded> chunks(Batch<E> batch) {
    List<Encoded> chunks = new ArrayList<>();
    List<E> events = batch.events();
    for (int from = 0; from < events.size(); from += CHUNK) {
      List<E> piece = events.subList(from, Math.min(events.size(), from + CHUNK));
      ChunkPlace place =
          new ChunkPlace(
              batch.stream().name(),
              batch.partition(),
              batch.importId(),
              batch.sequence(),
              chunks.size());
      chunks.add(
          new Encoded(
              Chunk.of(place, piece.size(), batch.stream().codec().encode(piece)),
              filters.of(batch.stream(), piece)));
    }
    return chunks;
  }

  @Override
  public synchronized void commit(ImportMarker marker) {
    writing(
        () -> {
          requireUncommitted(marker.id());
          if (!MarkerTable.isNewest(writer, marker.chain(), marker.parent())) {
            throw new StaleParentException(marker.chain());
          }
          MarkerTable.insert(writer, marker, ChunkTable.contents(writer, marker.id()));
          return marker;
        });
    filters.commit(marker.id());
  }

  @Override
  public synchronized LogSnapshot snapshot() {
    requireOpen();
    return file.reading(
        writer,
        () -> {
          markers = MarkerTable.withNewer(writer, markers);
          return new SqliteSnapshot(file, StreamTable.all(writer), markers, filters);
        });
  }

  @Override
  public synchronized long sweep() {
    long swept = writing(() -> ChunkTable.sweep(writer));
    filters.clear();
    makeMissingFilters();
    return swept;
  }

  private void makeMissingFilters() {
    file.reading(
        writer,
        () -> {
          markers = MarkerTable.withNewer(writer, markers);
          new MissingFilters(writer, filters).make(markers);
          return markers;
        });
  }

  @Override
  public synchronized void close() {
    if (!closed) {
      closed = true;
      file.trying(
          () -> {
            writer.close();
            return closed;
          });
    }
  }

  private <T> T writing(SqliteFile.Work<T> work) {
    requireOpen();
    return file.writing(writer, work);
  }

  private void requireOpen() {
    if (closed) {
      throw new IllegalStateException("The event log is closed");
    }
  }

  private void requireUncommitted(ImportId id) throws SQLException {
    if (MarkerTable.has(writer, id)) {
      throw new IllegalStateException(
          "Expected an import without a marker, but import %s is committed".formatted(id));
    }
  }
}
