package withers.finding;

import java.util.Optional;
import withers.contact.ContactRef;
import withers.id.OrganisationId;
import withers.id.SourceId;

/**
 * Somebody in a finding: a person behind a reference, or an organisation of the directory, or
 * nobody known.
 */
public sealed interface Who {

  /**
   * A person.
   *
   * @param suppliedBy the organisation whose source stated these details: only its own list may
   *     show them
   */
  record Person(ContactRef reference, SourceId source, OrganisationId suppliedBy) implements Who {}

  /** An organisation of the directory. */
  record Organisation(OrganisationId id) implements Who {}

  /** An organisation that records name but the directory does not know. */
  record Outside(String statedName) implements Who {}

  /** Nobody is stated. */
  record Nobody() implements Who {}

  default Optional<Person> person() {
    return this instanceof Person person ? Optional.of(person) : Optional.empty();
  }
}
