package withers.contact.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import withers.contact.ContactRef;
import withers.contact.ContactVault.RecordName;
import withers.contact.VaultKey;
import withers.contact.VaultUnavailableException;

/** Writes the vault's tables, inside the caller's transaction. */
final class Keeper {

  private final Connection connection;
  private final VaultKey key;
  private final Tables tables;
  private final Absent absent;

  /**
   * @param tables says which table a contact goes into
   * @param absent of which nothing is stored for sure
   */
  Keeper(Connection connection, VaultKey key, Tables tables, Absent absent) {
    this.connection = connection;
    this.key = key;
    this.tables = tables;
    this.absent = absent;
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

  /**
   * @param entries in the order of their references
   */
  int store(List<Entry> entries) throws SQLException {
    List<Entry> wanted = new ArrayList<>(entries.size());
    Set<ContactRef> unwanted = new TreeSet<>();
    boolean suppressing = count("forgotten_record") > 0;
    try (PreparedStatement select =
        connection.prepareStatement(
            "SELECT count(*) FROM forgotten_record WHERE source = ? AND key = ?")) {
      for (Entry one : entries) {
        if (suppressing && isSuppressed(select, one)) {
          unwanted.add(one.reference());
        } else if (wanted.isEmpty() || !isSame(one, wanted.get(wanted.size() - 1))) {
          wanted.add(one);
        }
      }
    }
    insertReferences("kept_out", unwanted);
    return insert(wanted);
  }

  private static boolean isSame(Entry one, Entry other) {
    return one.reference().equals(other.reference());
  }

  private int insert(List<Entry> contacts) throws SQLException {
    if (count("forgotten") > 0) {
      removeThoseIn("forgotten", contacts, Set.of());
    }
    if (tables.isLarge(contacts.size(), rows("contact"))) {
      settle();
      return insert("contact", contacts);
    }
    removeThoseIn("contact", contacts, absent.references());
    int inserted = insert("recent_contact", contacts);
    if (tables.areMany(rows("recent_contact"), rows("contact"))) {
      settle();
    }
    return inserted;
  }

  private void removeThoseIn(String table, List<Entry> contacts, Set<ContactRef> absent)
      throws SQLException {
    List<ContactRef> asked =
        contacts.stream()
            .map(Entry::reference)
            .filter(reference -> !absent.contains(reference))
            .toList();
    try (ManyReferences query =
        new ManyReferences(
            connection, "SELECT reference FROM %s WHERE reference IN ".formatted(table))) {
      Set<ContactRef> found = new HashSet<>();
      query.ask(asked, row -> found.add(References.read(Objects.requireNonNull(row.getBytes(1)))));
      contacts.removeIf(one -> found.contains(one.reference()));
    }
  }

  private static boolean isSuppressed(PreparedStatement select, Entry one) throws SQLException {
    select.setString(1, one.source().value());
    select.setString(2, one.key().value());
    try (ResultSet row = select.executeQuery()) {
      return row.getLong(1) > 0;
    }
  }

  /** Inserts contacts, none of which is in the other table, or forgotten. */
  private int insert(String table, List<Entry> contacts) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            "INSERT INTO %s VALUES(?, ?) ON CONFLICT DO NOTHING".formatted(table))) {
      for (Entry one : contacts) {
        insert.setBytes(1, References.bytes(one.reference()));
        insert.setBytes(2, one.fields());
        insert.addBatch();
      }
      return Arrays.stream(insert.executeBatch()).sum();
    }
  }

  /** Moves recent contacts to the others. */
  private void settle() throws SQLException {
    if (rows("recent_contact") > 0) {
      try (Statement statement = connection.createStatement()) {
        statement.executeUpdate(
            "INSERT INTO contact SELECT reference, fields FROM recent_contact ORDER BY reference");
        statement.executeUpdate("DELETE FROM recent_contact");
      }
    }
  }

  /** About how many rows a table has, and never less: its last row's number. */
  private long rows(String table) throws SQLException {
    return number("SELECT coalesce(max(rowid), 0) FROM " + table);
  }

  void forget(Collection<ContactRef> references, Collection<RecordName> records)
      throws SQLException {
    insertReferences("forgotten", references);
    delete("contact", references);
    delete("recent_contact", references);
    try (PreparedStatement insert =
        connection.prepareStatement(
            "INSERT INTO forgotten_record VALUES(?, ?) ON CONFLICT DO NOTHING")) {
      for (RecordName name : records) {
        insert.setString(1, name.source().value());
        insert.setString(2, name.key().value());
        insert.addBatch();
      }
      insert.executeBatch();
    }
  }

  /** What may be missing is not what is kept out: the one stays when the other ends. */
  void readmit(Collection<ContactRef> references, Collection<RecordName> records)
      throws SQLException {
    try (PreparedStatement insert =
            connection.prepareStatement(
                "INSERT INTO kept_out SELECT reference FROM forgotten WHERE reference = ? ON"
                    + " CONFLICT DO NOTHING");
        PreparedStatement delete =
            connection.prepareStatement(
                "DELETE FROM forgotten_record WHERE source = ? AND key = ?")) {
      for (ContactRef reference : references) {
        insert.setBytes(1, References.bytes(reference));
        insert.executeUpdate();
      }
      for (RecordName name : records) {
        delete.setString(1, name.source().value());
        delete.setString(2, name.key().value());
        delete.executeUpdate();
      }
    }
    delete("forgotten", references);
  }

  private void delete(String table, Collection<ContactRef> references) throws SQLException {
    try (PreparedStatement delete =
        connection.prepareStatement("DELETE FROM " + table + " WHERE reference = ?")) {
      for (ContactRef reference : references) {
        delete.setBytes(1, References.bytes(reference));
        delete.addBatch();
      }
      delete.executeBatch();
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

  /** How many contacts there are. */
  long size() throws SQLException {
    return count("contact") + count("recent_contact");
  }

  private long count(String table) throws SQLException {
    return number("SELECT count(*) FROM " + table);
  }

  private long number(String query) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement(query);
        ResultSet row = select.executeQuery()) {
      return row.getLong(1);
    }
  }
}
