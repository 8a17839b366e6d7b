package withers.fact;

import java.util.Optional;
import withers.contact.ContactRef;

/**
 * Someone who takes part in a fact: a person behind a reference, an organisation, or nobody stated.
 */
public sealed interface Party {

  /**
   * A contact as the source wrote it, person or organisation: which of the two it is, the directory
   * tells when the log is read, so that a new alias needs no new import.
   *
   * @param clientId the source's own id for this client: all versions of one client share it
   */
  record Contact(ContactRef reference, Optional<String> clientId) implements Party {}

  /**
   * An organisation by the name that the source gave it, from a column that names organisations
   * only.
   */
  record Organisation(String statedName) implements Party {}

  /** The organisation whose records these are. */
  record Own() implements Party {}

  /** The source states nobody. */
  record Unstated() implements Party {}
}
