package withers.auditing;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import withers.audit.AuditEvent;
import withers.audit.Erased;
import withers.audit.Readmitted;
import withers.contact.ContactRef;
import withers.contact.ContactVault.RecordName;
import withers.contact.Erasures;

/** What has to be kept out, by the audit: what was erased, and not let in again since. */
public final class StandingErasures {
  private StandingErasures() {}

  /** Of all that was written, in its order. */
  public static Erasures of(List<AuditEvent> audit) {
    Set<ContactRef> references = new HashSet<>();
    Set<RecordName> records = new HashSet<>();
    for (AuditEvent event : audit) {
      if (event instanceof Erased erased) {
        references.addAll(erased.references());
        records.addAll(erased.records());
      } else if (event instanceof Readmitted readmitted) {
        references.removeAll(Set.copyOf(readmitted.references()));
        records.removeAll(Set.copyOf(readmitted.records()));
      }
    }
    return new Erasures(references, records);
  }
}
