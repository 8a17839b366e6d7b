package withers.rule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import withers.contact.ContactRef;
import withers.fact.ContactRole;
import withers.fact.Fact;
import withers.fact.Party;
import withers.history.Statement;
import withers.id.OrganisationId;

/**
 * What a glance takes in of registrations: whom the live ones call first. Statements come record by
 * record, those of one in the order of the fold. For one thread.
 */
final class SeenRegistrations {
  private final List<OrganisationId> registries = new ArrayList<>(2);
  private final List<ContactRef> primaries = new ArrayList<>(2);
  private boolean allOfContacts = true;

  private @Nullable Statement current;
  private OrganisationId registry = new OrganisationId("none");
  private boolean listed;

  void take(Statement statement, OrganisationId of) {
    if (current == null || !isOfRecord(statement, current)) {
      endRecord();
    }
    current = statement;
    registry = of;
    listed |= statement.listed();
  }

  private static boolean isOfRecord(Statement one, Statement other) {
    return one.key().equals(other.key()) && one.source().equals(other.source());
  }

  /** A record is live while any of its statements is listed; the last one tells whom it names. */
  void endRecord() {
    if (current != null && listed) {
      registries.add(registry);
      addPrimary(((Fact.Registered) current.fact()).contact(ContactRole.PRIMARY));
    }
    current = null;
    listed = false;
  }

  private void addPrimary(Optional<Party> primary) {
    if (primary.orElse(null) instanceof Party.Contact contact) {
      primaries.add(contact.reference());
    } else {
      allOfContacts = false;
    }
  }

  boolean isNone() {
    return registries.isEmpty();
  }

  /** Whether each live one names somebody by a contact. */
  boolean areAllOfContacts() {
    return allOfContacts;
  }

  /** Whom the live ones call first. */
  List<ContactRef> primaries() {
    return primaries;
  }

  /** Where the live ones are. */
  List<OrganisationId> registries() {
    return registries;
  }
}
