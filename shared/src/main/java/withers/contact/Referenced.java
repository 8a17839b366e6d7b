package withers.contact;

/**
 * A contact with the reference that a vault made of it. The text form never shows details.
 *
 * @param reference as {@link ContactVault#reference} makes it
 */
public record Referenced(Contact contact, ContactRef reference) {}
