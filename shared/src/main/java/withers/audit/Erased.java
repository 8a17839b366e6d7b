package withers.audit;

import java.time.LocalDate;
import java.util.List;
import withers.contact.ContactRef;
import withers.contact.ContactVault.RecordName;

/**
 * People's details were forgotten on request. Written before the vault forgets them: it is what a
 * vault that comes back from a backup is told again.
 *
 * @param records those that stated them, and are kept out from now on
 */
public record Erased(
    LocalDate on, String by, String reason, List<ContactRef> references, List<RecordName> records)
    implements AuditEvent {
  public Erased {
    references = List.copyOf(references);
    records = List.copyOf(records);
  }
}
