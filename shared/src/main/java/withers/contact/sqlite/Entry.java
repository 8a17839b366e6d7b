package withers.contact.sqlite;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import withers.contact.ContactRef;
import withers.contact.ContactVault.Deposit;
import withers.contact.TaggedFields;
import withers.contact.VaultKey;
import withers.id.RecordKey;
import withers.id.SourceId;

/** A contact as it is stored: as bytes alone, since many wait while others are written. */
final class Entry {

  private final ContactRef reference;
  private final byte[] fields;
  private final SourceId source;
  private final RecordKey key;

  private Entry(Deposit deposit, ContactRef reference) {
    this.reference = reference;
    this.fields = TaggedFields.write(deposit.contact());
    this.source = deposit.source();
    this.key = deposit.key();
  }

  /** In the order of the references: inserting at random places is slower. */
  static List<Entry> inOrder(Collection<Deposit> deposits, VaultKey key) {
    return inOrder(
        deposits.stream().map(deposit -> new Entry(deposit, deposit.referenceBy(key))).toList());
  }

  /** These, in the same order; of several with one reference the first stays the first. */
  static List<Entry> inOrder(List<Entry> entries) {
    return entries.stream().sorted(Comparator.comparing(Entry::reference)).toList();
  }

  ContactRef reference() {
    return reference;
  }

  byte[] fields() {
    return fields;
  }

  /** Whose record states it. */
  SourceId source() {
    return source;
  }

  /** Of the record that states it. */
  RecordKey key() {
    return key;
  }
}
