package withers.contact.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.TaggedFields;
import withers.contact.VaultDamagedException;
import withers.contact.VaultKey;

/** Looks contacts up by reference, and makes sure that each is the one that the reference means. */
final class Finder {

  private final VaultKey key;
  private final PreparedStatement find;
  private final ManyReferences findMany;
  private final ManyReferences stored;
  private final PreparedStatement forgotten;

  Finder(Connection connection, VaultKey key) throws SQLException {
    this.key = key;
    this.find = connection.prepareStatement("SELECT fields FROM any_contact WHERE reference = ?");
    this.findMany =
        new ManyReferences(
            connection, "SELECT reference, fields FROM any_contact WHERE reference IN ");
    this.stored =
        new ManyReferences(connection, "SELECT reference FROM any_contact WHERE reference IN ");
    this.forgotten =
        connection.prepareStatement(
            """
            SELECT NOT EXISTS(SELECT 1 FROM any_contact WHERE reference = ?1)
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
    Map<ContactRef, byte[]> found = new HashMap<>();
    findMany.ask(
        references,
        row ->
            found.put(
                References.read(Objects.requireNonNull(row.getBytes(1))),
                Objects.requireNonNullElse(row.getBytes(2), new byte[0])));
    return found;
  }

  Set<ContactRef> stored(Collection<ContactRef> references) throws SQLException {
    Set<ContactRef> found = new HashSet<>();
    stored.ask(
        references, row -> found.add(References.read(Objects.requireNonNull(row.getBytes(1)))));
    return found;
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
