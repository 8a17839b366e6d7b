package withers.log.sqlite;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import withers.chip.ChipNumber;
import withers.log.Contents;
import withers.log.ImportMarker;
import withers.log.LogDamagedException;
import withers.log.LogSnapshot;
import withers.log.LogStream;
import withers.sqlite.SqliteFile;

/**
 * The markers as they were; the chunks that they make visible never change. Each replay that finds
 * something to read has a connection of its own.
 *
 * @param streams with how many partitions each was begun
 * @param filters tell which chunks need not be read
 */
record SqliteSnapshot(
    SqliteFile file, Map<String, Integer> streams, List<Committed> imports, ChipFilters filters)
    implements LogSnapshot {

  SqliteSnapshot {
    streams = Map.copyOf(streams);
    imports = List.copyOf(imports);
  }

  @Override
  public List<ImportMarker> markers() {
    return imports.stream().map(Committed::marker).toList();
  }

  @Override
  public <E> void replay(
      LogStream<E> stream,
      int partition,
      Predicate<ImportMarker> which,
      Handler<? super E> handler) {
    replay(stream, partition, which, one -> ChunkChoice.ALL, handler);
  }

  @Override
  public <E> void replayAbout(
      Set<ChipNumber> chips,
      LogStream<E> stream,
      int partition,
      Predicate<ImportMarker> which,
      Handler<? super E> handler) {
    replay(
        stream,
        partition,
        which,
        one -> new ChunkChoice(chips, filters.ofImport(one.id(), stream, partition)),
        handler);
  }

  private <E> void replay(
      LogStream<E> stream,
      int partition,
      Predicate<ImportMarker> which,
      Function<ImportMarker, ChunkChoice> choice,
      Handler<? super E> handler) {
    stream.requirePartition(partition);
    StreamTable.requireSame(streams, stream);
    List<Committed> wanted =
        imports.stream()
            .filter(one -> one.contents().at(stream.name(), partition).chunks() > 0)
            .filter(one -> which.test(one.marker()))
            .toList();
    if (!wanted.isEmpty()) {
      file.trying(() -> replay(stream, partition, wanted, choice, handler));
    }
  }

  private <E> List<Committed> replay(
      LogStream<E> stream,
      int partition,
      List<Committed> wanted,
      Function<ImportMarker, ChunkChoice> choice,
      Handler<? super E> handler)
      throws SQLException {
    try (Connection connection = file.openForReading();
        ChunkReader chunks = new ChunkReader(connection, stream.name(), partition)) {
      for (Committed one : wanted) {
        new ImportReplay<>(stream, partition, one, handler).run(chunks, choice.apply(one.marker()));
      }
    }
    return wanted;
  }

  /** One import in one partition. */
  private static final class ImportReplay<E> {
    private final LogStream<E> stream;
    private final int partition;
    private final ImportMarker marker;
    private final Contents.Count expected;
    private final Handler<? super E> handler;
    private Contents.Count seen = Contents.Count.NONE;

    ImportReplay(LogStream<E> stream, int partition, Committed one, Handler<? super E> handler) {
      this.stream = stream;
      this.partition = partition;
      this.marker = one.marker();
      this.expected = one.contents().at(stream.name(), partition);
      this.handler = handler;
    }

    void run(ChunkReader chunks, ChunkChoice choice) throws SQLException {
      if (choice.isAll()) {
        chunks.read(marker.id(), this::replay);
      } else {
        chunks.read(marker.id(), choice, this::replay, head -> seen = seen.plus(head.events()));
      }
      requireAll();
    }

    private void replay(Chunk chunk) {
      seen = seen.plus(chunk.events());
      byte[] plain = chunk.plain();
      try {
        stream.codec().decode(plain, event -> handler.on(event, marker));
      } catch (LogDamagedException e) {
        throw new LogDamagedException(chunk.place() + ": " + e.getMessage(), e);
      }
    }

    private void requireAll() {
      if (!seen.equals(expected)) {
        throw new LogDamagedException(
            "Event log, stream %s, partition %d, import %s: expected %d chunks of %d events, but found %d of %d; restore a backup"
                .formatted(
                    stream.name(),
                    partition,
                    marker.id(),
                    expected.chunks(),
                    expected.events(),
                    seen.chunks(),
                    seen.events()));
      }
    }
  }
}
