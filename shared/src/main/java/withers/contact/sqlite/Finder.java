package withers.contact.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault.RecordName;
import withers.contact.Erasures;
import withers.contact.TaggedFields;
import withers.contact.VaultDamagedException;
import withers.contact.VaultKey;
import withers.id.RecordKey;
import withers.id.SourceId;

/** Looks contacts up by reference, and makes sure that each is the one that the reference means. */
final class Finder {

  private final Connection connection;
  private final VaultKey key;
  private final PreparedStatement find;
  private final ManyReferences findSettled;
  private final ManyReferences findRecent;
  private final ManyReferences settled;
  private final ManyReferences recent;
  private final PreparedStatement forgotten;
  private final Absent absent;

  /**
   * @param absent is told of which nothing is stored
   */
  Finder(Connection connection, VaultKey key, Absent absent) throws SQLException {
    this.connection = connection;
    this.key = key;
    this.absent = absent;
    this.find = connection.prepareStatement("SELECT fields FROM any_contact WHERE reference = ?");
    this.findSettled =
        new ManyReferences(connection, "SELECT reference, fields FROM contact WHERE reference IN ");
    this.findRecent =
        new ManyReferences(
            connection, "SELECT reference, fields FROM recent_contact WHERE reference IN ");
    this.settled =
        new ManyReferences(connection, "SELECT reference FROM contact WHERE reference IN ");
    this.recent =
        new ManyReferences(connection, "SELECT reference FROM recent_contact WHERE reference IN ");
    // Hardly anybody is forgotten: only of who is, the large index is asked.
    this.forgotten =
        connection.prepareStatement(
            """
            SELECT CASE
              WHEN EXISTS(SELECT 1 FROM forgotten WHERE reference = ?1)
                OR EXISTS(SELECT 1 FROM kept_out WHERE reference = ?1)
              THEN NOT EXISTS(SELECT 1 FROM any_contact WHERE reference = ?1)
              ELSE 0 END""");
  }

  /** The stored fields; they still need to be {@link #checked}. */
  Optional<byte[]> find(ContactRef reference) throws SQLException {
    find.setBytes(1, References.bytes(reference));
    try (ResultSet row = find.executeQuery()) {
      return row.next()
          ? Optional.of(Objects.requireNonNullElse(row.getBytes(1), new byte[0]))
          : Optional.empty();
    }
  }

  /**
   * The stored fields of those that are there; they still need to be {@link #checked}. Asks in one
   * transaction. Most are settled: only the others are looked for among the recent.
   */
  Map<ContactRef, byte[]> find(Collection<ContactRef> references) throws SQLException {
    Map<ContactRef, byte[]> found = new HashMap<>();
    ManyReferences.Taker taker =
        row ->
            found.put(
                References.read(Objects.requireNonNull(row.getBytes(1))),
                Objects.requireNonNullElse(row.getBytes(2), new byte[0]));
    findSettled.ask(references, taker);
    findRecent.ask(others(references, found.keySet()), taker);
    return found;
  }

  private static List<ContactRef> others(Collection<ContactRef> references, Set<ContactRef> found) {
    return references.stream().filter(one -> !found.contains(one)).toList();
  }

  /** Asks in one transaction, the settled first. */
  Set<ContactRef> stored(Collection<ContactRef> references) throws SQLException {
    Set<ContactRef> found = new HashSet<>();
    ManyReferences.Taker taker =
        row -> found.add(References.read(Objects.requireNonNull(row.getBytes(1))));
    settled.ask(references, taker);
    recent.ask(others(references, found), taker);
    absent.note(references, found);
    return found;
  }

  boolean isForgotten(ContactRef reference) throws SQLException {
    forgotten.setBytes(1, References.bytes(reference));
    try (ResultSet row = forgotten.executeQuery()) {
      return row.getBoolean(1);
    }
  }

  Set<ContactRef> awaited() throws SQLException {
    return references(
        """
        SELECT reference FROM kept_out
        WHERE reference NOT IN (SELECT reference FROM forgotten)
          AND NOT EXISTS(SELECT 1 FROM any_contact WHERE reference = kept_out.reference)""");
  }

  private Set<ContactRef> references(String query) throws SQLException {
    Set<ContactRef> references = new HashSet<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(query)) {
      while (rows.next()) {
        references.add(References.read(Objects.requireNonNull(rows.getBytes(1))));
      }
    }
    return references;
  }

  Erasures erasures() throws SQLException {
    Set<ContactRef> references = references("SELECT reference FROM forgotten");
    Set<RecordName> records = new HashSet<>();
    try (Statement statement = connection.createStatement()) {
      try (ResultSet rows = statement.executeQuery("SELECT source, key FROM forgotten_record")) {
        while (rows.next()) {
          records.add(record(rows));
        }
      }
    }
    return new Erasures(references, records);
  }

  private static RecordName record(ResultSet row) throws SQLException {
    return new RecordName(
        new SourceId(Objects.requireNonNull(row.getString(1))),
        new RecordKey(Objects.requireNonNull(row.getString(2))));
  }

  void visit(BiConsumer<ContactRef, Contact> visitor) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery("SELECT reference, fields FROM any_contact")) {
      while (rows.next()) {
        ContactRef reference = References.read(Objects.requireNonNull(rows.getBytes(1)));
        byte[] fields = Objects.requireNonNullElse(rows.getBytes(2), new byte[0]);
        visitor.accept(reference, checked(reference, fields));
      }
    }
  }

  /** The contact that was stored so; safe for several threads. */
  Contact checked(ContactRef reference, byte[] fields) {
    Contact contact = TaggedFields.read(fields);
    if (reference.keyId() == key.id() && !key.reference(contact).equals(reference)) {
      throw new VaultDamagedException(
          "The contact behind %s is not as it was written; restore a backup of the vault"
              .formatted(reference));
    }
    return contact;
  }
}
