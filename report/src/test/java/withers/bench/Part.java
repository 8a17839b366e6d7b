package withers.bench;

import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import withers.contact.Contact;

/** The parts of a contact whose reading is measured each by itself, and all of them. */
enum Part {
  NAMES(contact -> with(contact, true, false, false, false)),
  PHONES(contact -> with(contact, false, true, false, false)),
  EMAILS(contact -> with(contact, false, false, true, false)),
  ADDRESSES(contact -> with(contact, false, false, false, true)),
  ALL(contact -> contact);

  private final UnaryOperator<Contact> only;

  Part(UnaryOperator<Contact> only) {
    this.only = only;
  }

  /** The contact with nothing but this part. */
  Contact of(Contact contact) {
    return only.apply(contact);
  }

  String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  private static Contact with(
      Contact contact, boolean name, boolean phones, boolean emails, boolean address) {
    return new Contact(
        name ? contact.name() : "",
        name ? contact.givenName() : "",
        name ? contact.familyName() : "",
        phones ? contact.phones() : List.of(),
        emails ? contact.emails() : List.of(),
        address ? contact.addressLines() : List.of(),
        address ? contact.postcode() : "",
        address ? contact.town() : "",
        address ? contact.region() : "",
        address ? contact.country() : "");
  }
}
