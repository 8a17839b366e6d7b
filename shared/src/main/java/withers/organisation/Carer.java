package withers.organisation;

import withers.contact.Contact;
import withers.id.OrganisationId;

/**
 * A foster carer or colony caretaker, and the organisation on whose behalf the animals are held.
 */
public record Carer(OrganisationId organisation, Contact contact) {}
