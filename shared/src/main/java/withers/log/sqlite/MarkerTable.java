package withers.log.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import withers.codec.MarkerJson;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.log.ImportMarker;
import withers.log.LogDamagedException;

/** The rows that make imports visible, numbered from 1 in the order of their commits. */
final class MarkerTable {

  private MarkerTable() {}

  /** A marker's row, as stored. */
  private record Row(
      long position,
      ImportId id,
      String chain,
      Optional<ImportId> parent,
      String contents,
      String body) {

    long checksum() {
      return new Checksum()
          .add(position)
          .add(Ids.bytes(id))
          .add(chain)
          .add(Ids.bytes(parent))
          .add(contents)
          .add(body)
          .value();
    }
  }

  static boolean has(Connection connection, ImportId id) throws SQLException {
    try (PreparedStatement select =
        connection.prepareStatement("SELECT count(*) FROM marker WHERE id = ?")) {
      select.setBytes(1, Ids.bytes(id));
      try (ResultSet row = select.executeQuery()) {
        return row.getLong(1) > 0;
      }
    }
  }

  /**
   * Whether the parent is the newest marker of the chain, or the chain has none and neither is
   * named.
   */
  static boolean isNewest(Connection connection, SourceId chain, Optional<ImportId> parent)
      throws SQLException {
    try (PreparedStatement select =
        connection.prepareStatement(
            "SELECT id FROM marker WHERE chain = ? ORDER BY position DESC LIMIT 1")) {
      select.setString(1, chain.value());
      try (ResultSet row = select.executeQuery()) {
        byte[] newest = row.next() ? row.getBytes(1) : new byte[0];
        return Arrays.equals(newest, Ids.bytes(parent));
      }
    }
  }

  static void insert(Connection connection, ImportMarker marker, Contents contents)
      throws SQLException {
    Row row =
        new Row(
            count(connection) + 1,
            marker.id(),
            marker.chain().value(),
            marker.parent(),
            contents.text(),
            MarkerJson.write(marker));
    try (PreparedStatement insert =
            connection.prepareStatement("INSERT INTO marker VALUES(?, ?, ?, ?, ?, ?, ?)");
        PreparedStatement head =
            connection.prepareStatement("UPDATE head SET markers = markers + 1")) {
      insert.setLong(1, row.position);
      insert.setBytes(2, Ids.bytes(row.id));
      insert.setString(3, row.chain);
      insert.setBytes(4, Ids.bytes(row.parent));
      insert.setString(5, row.contents);
      insert.setString(6, row.body);
      insert.setLong(7, row.checksum());
      insert.executeUpdate();
      head.executeUpdate();
    }
  }

  private static long count(Connection connection) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement("SELECT markers FROM head");
        ResultSet row = select.executeQuery()) {
      return row.getLong(1);
    }
  }

  /** All markers with what their imports hold, checked, in the order of their commits. */
  static List<Committed> all(Connection connection) throws SQLException {
    List<Committed> all = new ArrayList<>();
    try (PreparedStatement select =
            connection.prepareStatement(
                "SELECT contents, body, checksum FROM marker ORDER BY position");
        ResultSet rows = select.executeQuery()) {
      while (rows.next()) {
        all.add(committed(all.size() + 1, rows));
      }
    }
    if (all.size() != count(connection)) {
      throw damaged(all.size() + 1L);
    }
    return all;
  }

  private static Committed committed(long position, ResultSet rows) throws SQLException {
    String contents = rows.getString(1);
    String body = rows.getString(2);
    ImportMarker marker = MarkerJson.read(body);
    Row row =
        new Row(position, marker.id(), marker.chain().value(), marker.parent(), contents, body);
    if (rows.getLong(3) != row.checksum()) {
      throw damaged(position);
    }
    return new Committed(marker, Contents.parse(contents));
  }

  private static LogDamagedException damaged(long position) {
    return new LogDamagedException(
        "Event log, marker %d: not as it was written; restore a backup".formatted(position));
  }
}
