package withers.log.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import withers.codec.MarkerJson;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.log.Contents;
import withers.log.ImportMarker;
import withers.log.LogDamagedException;

/** The rows that make imports visible, numbered from 1 in the order of their commits. */
final class MarkerTable {

  private static final HexFormat HEX = HexFormat.of();

  private MarkerTable() {}

  /** A marker's row, as stored; ids in hexadecimal. */
  private record Row(
      long position, String id, String chain, String parent, String contents, String body) {

    long checksum() {
      return new Checksum()
          .add(position)
          .add(id)
          .add(chain)
          .add(parent)
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
            HEX.formatHex(Ids.bytes(marker.id())),
            marker.chain().value(),
            HEX.formatHex(Ids.bytes(marker.parent())),
            contents.text(),
            MarkerJson.write(marker));
    try (PreparedStatement insert =
            connection.prepareStatement("INSERT INTO marker VALUES(?, ?, ?, ?, ?, ?, ?)");
        PreparedStatement head =
            connection.prepareStatement("UPDATE head SET markers = markers + 1")) {
      insert.setLong(1, row.position);
      insert.setBytes(2, Ids.bytes(marker.id()));
      insert.setString(3, row.chain);
      insert.setBytes(4, Ids.bytes(marker.parent()));
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

  /**
   * All markers with what their imports hold, checked, in the order of their commits.
   *
   * @param known the first of them, from an earlier reading: they are not read again
   */
  static List<Committed> withNewer(Connection connection, List<Committed> known)
      throws SQLException {
    long count = count(connection);
    if (count == known.size()) {
      return known;
    }
    List<Committed> all = new ArrayList<>(known);
    try (PreparedStatement select =
        connection.prepareStatement(
            """
            SELECT position, hex(id), chain, hex(parent), contents, body, checksum
            FROM marker WHERE position > ? ORDER BY position""")) {
      select.setLong(1, known.size());
      try (ResultSet rows = select.executeQuery()) {
        while (rows.next()) {
          all.add(committed(all.size() + 1, rows));
        }
      }
    }
    if (all.size() != count) {
      throw damaged(all.size() + 1L);
    }
    return List.copyOf(all);
  }

  private static Committed committed(long position, ResultSet rows) throws SQLException {
    Row row =
        new Row(
            rows.getLong(1),
            text(rows, 2).toLowerCase(Locale.ROOT),
            text(rows, 3),
            text(rows, 4).toLowerCase(Locale.ROOT),
            text(rows, 5),
            text(rows, 6));
    if (row.position != position || rows.getLong(7) != row.checksum()) {
      throw damaged(position);
    }
    return new Committed(MarkerJson.read(row.body), Contents.parse(row.contents));
  }

  // A damaged row may hold nothing where the schema allows no such thing.
  private static String text(ResultSet rows, int column) throws SQLException {
    return Objects.requireNonNullElse(rows.getString(column), "");
  }

  private static LogDamagedException damaged(long position) {
    return new LogDamagedException(
        "Event log, marker %d: not as it was written; restore a backup".formatted(position));
  }
}
