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

/**
 * A contact as it is stored: bytes alone, since many wait while others are written.
 *
 * @param fields what it says
 * @param source whose record states it
 * @param key of that record
 */
@SuppressWarnings("ArrayRecordComponent") // nobody compares entries, or changes their bytes
record Entry(ContactRef reference, byte[] fields, SourceId source, RecordKey key) {

  /** In the order of the references: inserting at random places is slower. */
  static List<Entry> inOrder(Collection<Deposit> deposits, VaultKey maker) {
    return inOrder(deposits.stream().map(deposit -> of(deposit, maker)).toList());
  }

  /** These, in the same order; of several with one reference the first stays the first. */
  static List<Entry> inOrder(List<Entry> entries) {
    return entries.stream().sorted(Comparator.comparing(Entry::reference)).toList();
  }

  private static Entry of(Deposit deposit, VaultKey maker) {
    return new Entry(
        deposit.referenceBy(maker),
        TaggedFields.write(deposit.contact()),
        deposit.source(),
        deposit.key());
  }
}
