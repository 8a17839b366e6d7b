package withers.contact.sqlite;

import java.nio.ByteBuffer;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.zip.CRC32C;
import withers.contact.ContactRef;
import withers.contact.FormStore.Kept;

/** Reads and writes the tables of forms, inside the caller's transaction. For one thread. */
final class FormTable {

  private final PreparedStatement upsert;
  private final ManyReferences find;
  private final long maker;
  private long damaged;

  /**
   * @param stamp of the maker of today
   */
  FormTable(Connection connection, String stamp) throws SQLException {
    this.maker = maker(connection, stamp);
    this.upsert =
        connection.prepareStatement(
            """
            INSERT INTO form VALUES(?, ?, ?, ?) ON CONFLICT(reference) DO UPDATE
            SET maker = excluded.maker, checksum = excluded.checksum, form = excluded.form""");
    this.find =
        new ManyReferences(
            connection, "SELECT reference, maker, checksum, form FROM form WHERE reference IN ");
  }

  private static long maker(Connection connection, String stamp) throws SQLException {
    try (PreparedStatement insert =
            connection.prepareStatement(
                "INSERT INTO maker(stamp) VALUES(?) ON CONFLICT DO NOTHING");
        PreparedStatement select =
            connection.prepareStatement("SELECT id FROM maker WHERE stamp = ?")) {
      insert.setString(1, stamp);
      insert.executeUpdate();
      select.setString(1, stamp);
      try (ResultSet row = select.executeQuery()) {
        return row.getLong(1);
      }
    }
  }

  Kept find(Collection<ContactRef> references) throws SQLException {
    Kept kept = new Kept();
    find.ask(references, row -> take(row, kept));
    return kept;
  }

  private void take(ResultSet row, Kept kept) throws SQLException {
    byte[] reference = Objects.requireNonNull(row.getBytes(1));
    long madeBy = row.getLong(2);
    byte[] form = Objects.requireNonNullElse(row.getBytes(4), new byte[0]);
    if (row.getLong(3) != checksum(reference, madeBy, form)) {
      damaged++;
    } else if (madeBy == maker) {
      kept.current().put(References.read(reference), form);
    } else {
      kept.outdated().put(References.read(reference), form);
    }
  }

  /** How many forms were found damaged. */
  long damaged() {
    return damaged;
  }

  /** In the order of the references: inserting at random places is several times slower. */
  int keep(Map<ContactRef, byte[]> forms) throws SQLException {
    for (Map.Entry<ContactRef, byte[]> one : new TreeMap<>(forms).entrySet()) {
      byte[] reference = References.bytes(one.getKey());
      upsert.setBytes(1, reference);
      upsert.setLong(2, maker);
      upsert.setLong(3, checksum(reference, maker, one.getValue()));
      upsert.setBytes(4, one.getValue());
      upsert.addBatch();
    }
    return upsert.executeBatch().length;
  }

  static int delete(Connection connection, Collection<ContactRef> references) throws SQLException {
    try (PreparedStatement delete =
        connection.prepareStatement("DELETE FROM form WHERE reference = ?")) {
      for (ContactRef reference : references) {
        delete.setBytes(1, References.bytes(reference));
        delete.addBatch();
      }
      return delete.executeBatch().length;
    }
  }

  /** CRC-32C (RFC 3720, appendix B.4): a form that came to another contact fails it, too. */
  private static long checksum(byte[] reference, long maker, byte[] form) {
    CRC32C crc = new CRC32C();
    crc.update(reference);
    crc.update(ByteBuffer.allocate(Long.BYTES).putLong(0, maker));
    crc.update(form);
    return crc.getValue();
  }
}
