package withers.log.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.function.Consumer;
import java.util.function.Predicate;
import withers.id.ImportId;

/** Reads the chunks of one partition, import by import. */
final class ChunkReader implements AutoCloseable {
  private final String stream;
  private final int partition;
  private final Connection connection;
  private final PreparedStatement select;

  ChunkReader(Connection connection, String stream, int partition) throws SQLException {
    this.stream = stream;
    this.partition = partition;
    this.connection = connection;
    this.select = prepare("events, length, checksum, body", "ORDER BY sequence, piece");
  }

  private PreparedStatement prepare(String columns, String end) throws SQLException {
    PreparedStatement statement =
        connection.prepareStatement(
            "SELECT sequence, piece, %s FROM chunk WHERE stream = ? AND partition = ? AND import = ? %s"
                .formatted(columns, end));
    statement.setString(1, stream);
    statement.setInt(2, partition);
    return statement;
  }

  /** Hands over an import's chunks, batch by batch, piece by piece. */
  void read(ImportId importId, Consumer<Chunk> consumer) throws SQLException {
    select.setBytes(3, Ids.bytes(importId));
    try (ResultSet rows = select.executeQuery()) {
      while (rows.next()) {
        consumer.accept(chunk(rows, importId));
      }
    }
  }

  /** Hands over those of an import's chunks that are wanted, and of the others the heads alone. */
  void read(
      ImportId importId,
      Predicate<ChunkHead> wanted,
      Consumer<Chunk> consumer,
      Consumer<ChunkHead> others)
      throws SQLException {
    try (PreparedStatement heads = prepare("events, checksum", "ORDER BY sequence, piece");
        PreparedStatement one =
            prepare("events, length, checksum, body", "AND sequence = ? AND piece = ?")) {
      heads.setBytes(3, Ids.bytes(importId));
      one.setBytes(3, Ids.bytes(importId));
      try (ResultSet rows = heads.executeQuery()) {
        while (rows.next()) {
          ChunkHead head = head(rows);
          if (wanted.test(head)) {
            consumer.accept(chunk(one, head, importId));
          } else {
            others.accept(head);
          }
        }
      }
    }
  }

  private static ChunkHead head(ResultSet row) throws SQLException {
    return new ChunkHead(row.getLong(1), row.getLong(2), row.getInt(3), row.getLong(4));
  }

  private Chunk chunk(PreparedStatement one, ChunkHead head, ImportId importId)
      throws SQLException {
    one.setLong(4, head.sequence());
    one.setLong(5, head.piece());
    try (ResultSet row = one.executeQuery()) {
      return chunk(row, importId);
    }
  }

  private Chunk chunk(ResultSet row, ImportId importId) throws SQLException {
    ChunkPlace place = new ChunkPlace(stream, partition, importId, row.getLong(1), row.getLong(2));
    byte[] body = row.getBytes(6);
    return new Chunk(
        place,
        row.getInt(3),
        row.getInt(4),
        row.getLong(5),
        new Chunk.Body(body == null ? new byte[0] : body));
  }

  @Override
  public void close() throws SQLException {
    select.close();
  }
}
