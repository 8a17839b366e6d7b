package withers.contact.sqlite;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import withers.contact.ContactRef;
import withers.contact.ContactVault.Deposit;
import withers.contact.TaggedFields;
import withers.contact.VaultKey;

/** A contact as it is stored. */
final class Entry {

  private final Deposit deposit;
  private final ContactRef reference;
  private final byte[] name;
  private final byte[] fields;

  private Entry(Deposit deposit, ContactRef reference) {
    this.deposit = deposit;
    this.reference = reference;
    this.name = References.bytes(reference);
    this.fields = TaggedFields.write(deposit.contact());
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

  /** What stated it. */
  Deposit deposit() {
    return deposit;
  }

  ContactRef reference() {
    return reference;
  }

  /** The reference as bytes. */
  byte[] name() {
    return name;
  }

  byte[] fields() {
    return fields;
  }
}
