package withers.audit;

import java.time.LocalDate;
import java.util.List;
import withers.contact.ContactRef;

/**
 * What the workspace's policy does not keep any longer was deleted.
 *
 * @param what kinds and how many of each, such as {@code quarantine 3}
 */
public record TidiedUp(LocalDate on, String by, String reason, List<String> what)
    implements AuditEvent {
  public TidiedUp {
    what = List.copyOf(what);
  }

  /** Nobody by reference: whom files told of is not known. */
  @Override
  public List<ContactRef> references() {
    return List.of();
  }
}
