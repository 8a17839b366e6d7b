package withers.contacts;

import java.util.List;
import withers.contact.ContactRef;

/** Contacts would be looked up by themselves; whoever can wait looks them up with others. */
public final class NotPreparedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient List<ContactRef> references;

  NotPreparedException(List<ContactRef> references) {
    super("Asked about contacts that are to be looked up with others", null, false, false);
    this.references = references;
  }

  /** The contacts. */
  public List<ContactRef> references() {
    return references;
  }
}
