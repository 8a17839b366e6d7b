package withers.ingest;

import java.util.List;
import java.util.Set;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contact.ContactVault.RecordName;
import withers.contact.Referenced;

/**
 * What a vault keeps out, and whom it awaits.
 *
 * @param records of which nothing is stored
 * @param awaited those who were let in again: records that are as they were state them, too
 */
record KeptOut(Set<RecordName> records, Set<ContactRef> awaited) {

  static KeptOut of(ContactVault vault) {
    return new KeptOut(vault.erasures().records(), vault.awaited());
  }

  /** Those of a record's contacts who are awaited; nearly always nobody is. */
  List<Referenced> awaited(List<Referenced> stated) {
    return awaited.isEmpty()
        ? List.of()
        : stated.stream().filter(one -> awaited.contains(one.reference())).toList();
  }
}
