package withers.log.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.function.Consumer;
import withers.id.ImportId;

/** Reads the chunks of one partition, import by import. */
final class ChunkReader implements AutoCloseable {
  private final String stream;
  private final int partition;
  private final PreparedStatement select;

  ChunkReader(Connection connection, String stream, int partition) throws SQLException {
    this.stream = stream;
    this.partition = partition;
    this.select =
        connection.prepareStatement(
            """
            SELECT sequence, piece, events, length, checksum, body FROM chunk
            WHERE stream = ? AND partition = ? AND import = ? ORDER BY sequence, piece""");
    select.setString(1, stream);
    select.setInt(2, partition);
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
