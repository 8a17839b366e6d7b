package withers.log.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import withers.log.LogStream;
import withers.log.LogUnavailableException;

/** With how many partitions each stream of the file was begun. */
final class StreamTable {

  private StreamTable() {}

  /**
   * Writes the stream down when it is new.
   *
   * @throws LogUnavailableException when it was begun with another number of partitions
   */
  static void register(Connection connection, LogStream<?> stream) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement("INSERT INTO stream VALUES(?, ?) ON CONFLICT DO NOTHING")) {
      insert.setString(1, stream.name());
      insert.setInt(2, stream.partitions());
      insert.executeUpdate();
    }
    requireSame(all(connection), stream);
  }

  /**
   * Makes sure that a stream is as it was begun.
   *
   * @param all partitions by stream
   * @throws LogUnavailableException when it was begun with another number of partitions
   */
  static void requireSame(Map<String, Integer> all, LogStream<?> stream) {
    int begun = all.getOrDefault(stream.name(), stream.partitions());
    if (begun != stream.partitions()) {
      throw new LogUnavailableException(
          "Expected %d partitions of %s, but the event log was begun with %d; only copying it changes that"
              .formatted(stream.partitions(), stream.name(), begun));
    }
  }

  /** Partitions by stream. */
  static Map<String, Integer> all(Connection connection) throws SQLException {
    Map<String, Integer> all = new TreeMap<>();
    try (PreparedStatement select = connection.prepareStatement("SELECT * FROM stream");
        ResultSet rows = select.executeQuery()) {
      while (rows.next()) {
        all.put(Objects.requireNonNullElse(rows.getString(1), ""), rows.getInt(2));
      }
    }
    return all;
  }
}
