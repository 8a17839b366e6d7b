package withers.audit;

import java.time.LocalDate;
import java.util.List;
import withers.contact.ContactRef;

/**
 * People's details were shown to somebody.
 *
 * @param command the command that showed them
 */
public record Disclosed(
    LocalDate on, String by, String reason, String command, List<ContactRef> references)
    implements AuditEvent {
  public Disclosed {
    references = List.copyOf(references);
  }
}
