package withers.contact;

import java.util.Set;
import withers.contact.ContactVault.RecordName;

/**
 * What a vault keeps out, because it was forgotten on request.
 *
 * @param references of forgotten contacts
 * @param records those of which nothing is stored any more
 */
public record Erasures(Set<ContactRef> references, Set<RecordName> records) {
  public Erasures {
    references = Set.copyOf(references);
    records = Set.copyOf(records);
  }

  /** Whether nothing was ever forgotten. */
  public boolean isEmpty() {
    return references.isEmpty() && records.isEmpty();
  }
}
