package withers.matching.form;

import java.util.List;
import withers.contact.Contact;

/** The fields of a contact that its address is read from. The text form never shows them. */
record WrittenAddress(
    List<String> lines, String postcode, String town, String region, String country) {

  static WrittenAddress of(Contact contact) {
    return new WrittenAddress(
        contact.addressLines(),
        contact.postcode(),
        contact.town(),
        contact.region(),
        contact.country());
  }

  /** A contact that states nothing else. */
  Contact contact() {
    return new Contact("", "", "", List.of(), List.of(), lines, postcode, town, region, country);
  }

  @Override
  public String toString() {
    return "WrittenAddress[details withheld]";
  }
}
