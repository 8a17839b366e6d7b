package withers.contact.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.TaggedFields;
import withers.contact.VaultDamagedException;
import withers.contact.VaultKey;

/** Looks contacts up by reference, and makes sure that each is the one that the reference means. */
final class Finder {

  /** References asked for in one query: each query costs more than a look-up does. */
  private static final int TOGETHER = 200;

  private final VaultKey key;
  private final PreparedStatement find;
  private final PreparedStatement findMany;
  private final PreparedStatement forgotten;

  Finder(Connection connection, VaultKey key) throws SQLException {
    this.key = key;
    this.find = connection.prepareStatement("SELECT fields FROM contact WHERE reference = ?");
    this.findMany =
        connection.prepareStatement(
            "SELECT reference, fields FROM contact WHERE reference IN (?"
                + ", ?".repeat(TOGETHER - 1)
                + ")");
    this.forgotten =
        connection.prepareStatement(
            """
            SELECT NOT EXISTS(SELECT 1 FROM contact WHERE reference = ?1)
              AND (EXISTS(SELECT 1 FROM forgotten WHERE reference = ?1)
                OR EXISTS(SELECT 1 FROM kept_out WHERE reference = ?1))""");
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

  /** The stored fields of those that are there; they still need to be {@link #checked}. */
  Map<ContactRef, byte[]> find(Collection<ContactRef> references) throws SQLException {
    // In the order of the index, neighbours share its pages.
    List<ContactRef> inOrder = references.stream().sorted().toList();
    Map<ContactRef, byte[]> found = new HashMap<>();
    for (int from = 0; from < inOrder.size(); from += TOGETHER) {
      findTogether(inOrder.subList(from, Math.min(inOrder.size(), from + TOGETHER)), found);
    }
    return found;
  }

  private void findTogether(List<ContactRef> references, Map<ContactRef, byte[]> found)
      throws SQLException {
    for (int i = 0; i < TOGETHER; i++) {
      // The last query is filled up with a reference that it has already.
      ContactRef reference = references.get(Math.min(i, references.size() - 1));
      findMany.setBytes(i + 1, References.bytes(reference));
    }
    try (ResultSet rows = findMany.executeQuery()) {
      while (rows.next()) {
        found.put(
            References.read(Objects.requireNonNull(rows.getBytes(1))),
            Objects.requireNonNullElse(rows.getBytes(2), new byte[0]));
      }
    }
  }

  boolean isForgotten(ContactRef reference) throws SQLException {
    forgotten.setBytes(1, References.bytes(reference));
    try (ResultSet row = forgotten.executeQuery()) {
      return row.getBoolean(1);
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
