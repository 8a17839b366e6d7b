package withers.log.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import withers.id.ImportId;
import withers.log.Contents;

/** The rows that hold events. */
final class ChunkTable {

  private static final String UNCOMMITTED =
      " FROM chunk WHERE import NOT IN (SELECT id FROM marker)";

  private ChunkTable() {}

  static void insert(Connection connection, List<Chunk> chunks) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement("INSERT INTO chunk VALUES(?, ?, ?, ?, ?, ?, ?, ?, ?)")) {
      for (Chunk chunk : chunks) {
        bind(insert, chunk.place());
        insert.setLong(4, chunk.place().sequence());
        insert.setLong(5, chunk.place().piece());
        insert.setInt(6, chunk.events());
        insert.setInt(7, chunk.length());
        insert.setLong(8, chunk.checksum());
        insert.setBytes(9, chunk.body().bytes());
        insert.addBatch();
      }
      insert.executeBatch();
    }
  }

  /** What the import has brought so far. */
  static Contents contents(Connection connection, ImportId importId) throws SQLException {
    Map<Contents.Place, Contents.Count> counts = new HashMap<>();
    try (PreparedStatement select =
        connection.prepareStatement(
            """
            SELECT count(*), sum(events) FROM chunk
            WHERE stream = ? AND partition = ? AND import = ?""")) {
      select.setBytes(3, Ids.bytes(importId));
      for (Map.Entry<String, Integer> stream : StreamTable.all(connection).entrySet()) {
        for (int partition = 0; partition < stream.getValue(); partition++) {
          count(select, new Contents.Place(stream.getKey(), partition), counts);
        }
      }
    }
    return new Contents(counts);
  }

  private static void count(
      PreparedStatement select, Contents.Place place, Map<Contents.Place, Contents.Count> counts)
      throws SQLException {
    select.setString(1, place.stream());
    select.setInt(2, place.partition());
    try (ResultSet row = select.executeQuery()) {
      if (row.getLong(1) > 0) {
        counts.put(place, new Contents.Count(row.getLong(1), row.getLong(2)));
      }
    }
  }

  /** Removes the chunks of imports without a marker, and tells of how many batches they were. */
  static long sweep(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      long batches;
      try (ResultSet row =
          statement.executeQuery(
              "SELECT count(*) FROM (SELECT DISTINCT stream, partition, import, sequence"
                  + UNCOMMITTED
                  + ")")) {
        batches = row.getLong(1);
      }
      statement.executeUpdate("DELETE" + UNCOMMITTED);
      return batches;
    }
  }

  private static void bind(PreparedStatement statement, ChunkPlace place) throws SQLException {
    statement.setString(1, place.stream());
    statement.setInt(2, place.partition());
    statement.setBytes(3, Ids.bytes(place.importId()));
  }
}
