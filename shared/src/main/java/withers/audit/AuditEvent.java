package withers.audit;

import java.time.LocalDate;
import java.util.List;
import withers.contact.ContactRef;

/**
 * Somebody handled what is held on people. Details are never in it; its references are pseudonymous
 * personal data, as all on the log are.
 */
public sealed interface AuditEvent permits Disclosed, Erased, Confidential, TidiedUp, Readmitted {

  /** The day, in the workspace's zone. */
  LocalDate on();

  /** In which role somebody did it; never a name. */
  String by();

  /** Why, in that person's words, without details of anyone. */
  String reason();

  /** The contacts that were handled. */
  List<ContactRef> references();
}
