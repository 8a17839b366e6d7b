package withers.contact.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.Collection;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault.Deposit;
import withers.contact.ContactVault.RecordName;
import withers.contact.TaggedFields;
import withers.contact.VaultKey;
import withers.contact.VaultUnavailableException;

/** Writes the vault's tables, inside the caller's transaction. */
final class Keeper {

  private final Connection connection;
  private final VaultKey key;

  Keeper(Connection connection, VaultKey key) {
    this.connection = connection;
    this.key = key;
  }

  /**
   * @throws VaultUnavailableException when the vault was filled with another key of this id
   */
  void requireKey() throws SQLException {
    try (PreparedStatement insert =
            connection.prepareStatement(
                "INSERT INTO vault_key VALUES(?, ?) ON CONFLICT DO NOTHING");
        PreparedStatement select =
            connection.prepareStatement("SELECT proof FROM vault_key WHERE id = ?")) {
      insert.setInt(1, key.id());
      insert.setBytes(2, key.proof());
      insert.executeUpdate();
      select.setInt(1, key.id());
      try (ResultSet row = select.executeQuery()) {
        if (!Arrays.equals(row.getBytes(1), key.proof())) {
          throw new VaultUnavailableException(
              "Expected the key %d that the contact vault was filled with, but found another of that id; restore the right one from its backup"
                  .formatted(key.id()));
        }
      }
    }
  }

  int store(Collection<Deposit> deposits) throws SQLException {
    // In the order of the references: inserting at random places is several times slower.
    SortedMap<ContactRef, Contact> wanted = new TreeMap<>();
    SortedMap<ContactRef, Contact> unwanted = new TreeMap<>();
    boolean suppressing = count("forgotten_record") > 0;
    try (PreparedStatement select =
        connection.prepareStatement(
            "SELECT count(*) FROM forgotten_record WHERE source = ? AND key = ?")) {
      for (Deposit deposit : deposits) {
        boolean suppressed = suppressing && suppressed(select, deposit);
        (suppressed ? unwanted : wanted)
            .putIfAbsent(key.reference(deposit.contact()), deposit.contact());
      }
    }
    insertReferences("kept_out", unwanted.keySet());
    return insert(wanted);
  }

  private static boolean suppressed(PreparedStatement select, Deposit deposit) throws SQLException {
    select.setString(1, deposit.source().value());
    select.setString(2, deposit.key().value());
    try (ResultSet row = select.executeQuery()) {
      return row.getLong(1) > 0;
    }
  }

  private int insert(Map<ContactRef, Contact> contacts) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            """
            INSERT INTO contact SELECT ?1, ?2
            WHERE NOT EXISTS(SELECT 1 FROM forgotten WHERE reference = ?1)
            ON CONFLICT DO NOTHING""")) {
      for (Map.Entry<ContactRef, Contact> one : contacts.entrySet()) {
        insert.setBytes(1, References.bytes(one.getKey()));
        insert.setBytes(2, TaggedFields.write(one.getValue()));
        insert.addBatch();
      }
      return Arrays.stream(insert.executeBatch()).sum();
    }
  }

  void forget(Collection<ContactRef> references, Collection<RecordName> records)
      throws SQLException {
    insertReferences("forgotten", references);
    try (PreparedStatement delete =
            connection.prepareStatement("DELETE FROM contact WHERE reference = ?");
        PreparedStatement insert =
            connection.prepareStatement(
                "INSERT INTO forgotten_record VALUES(?, ?) ON CONFLICT DO NOTHING")) {
      for (ContactRef reference : references) {
        delete.setBytes(1, References.bytes(reference));
        delete.addBatch();
      }
      delete.executeBatch();
      for (RecordName name : records) {
        insert.setString(1, name.source().value());
        insert.setString(2, name.key().value());
        insert.addBatch();
      }
      insert.executeBatch();
    }
  }

  private void insertReferences(String table, Collection<ContactRef> references)
      throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement("INSERT INTO " + table + " VALUES(?) ON CONFLICT DO NOTHING")) {
      for (ContactRef reference : references) {
        insert.setBytes(1, References.bytes(reference));
        insert.addBatch();
      }
      insert.executeBatch();
    }
  }

  long count(String table) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement("SELECT count(*) FROM " + table);
        ResultSet row = select.executeQuery()) {
      return row.getLong(1);
    }
  }
}
