package withers.report.privacy;

import withers.contact.Contact;
import withers.contact.ContactRef;

/**
 * A contact that may be the person who is looked for. The text form never shows details.
 *
 * @param isSame whether it is judged to be the same person
 * @param why what speaks for it, in words
 */
public record Match(ContactRef reference, Contact contact, boolean isSame, String why) {}
