package withers.audit;

import java.time.LocalDate;
import java.util.List;
import withers.contact.ContactRef;
import withers.contact.ContactVault.RecordName;

/**
 * Somebody who was forgotten has come back and agreed to be held again. Written before the vault is
 * told: an erasure does not hold for these any longer.
 *
 * @param records those that are no longer kept out
 */
public record Readmitted(
    LocalDate on, String by, String reason, List<ContactRef> references, List<RecordName> records)
    implements AuditEvent {
  public Readmitted {
    references = List.copyOf(references);
    records = List.copyOf(records);
  }
}
