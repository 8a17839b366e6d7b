package withers.contact;

import java.util.ArrayList;
import java.util.List;

/**
 * A person or organisation and how to reach it, as a source wrote it. Every field may be empty,
 * none is null. The text form never shows details.
 *
 * @param name the whole name, or empty when given and family name stand apart
 */
public record Contact(
    String name,
    String givenName,
    String familyName,
    List<String> phones,
    List<String> emails,
    List<String> addressLines,
    String postcode,
    String town,
    String region,
    String country) {

  public static final Contact NOBODY =
      new Contact("", "", "", List.of(), List.of(), List.of(), "", "", "", "");

  public Contact {
    name = name.strip();
    givenName = givenName.strip();
    familyName = familyName.strip();
    phones = stripped(phones);
    emails = stripped(emails);
    addressLines = stripped(addressLines);
    postcode = postcode.strip();
    town = town.strip();
    region = region.strip();
    country = country.strip();
  }

  /** The name in one piece: the whole name, or given and family name joined. */
  public String fullName() {
    return name.isEmpty() ? (givenName + " " + familyName).strip() : name;
  }

  /** Whether no field says anything. */
  public boolean isNobody() {
    return equals(NOBODY);
  }

  /** A contact without details, so that a stray message can't show any. */
  @Override
  public String toString() {
    return isNobody() ? "Contact[nobody]" : "Contact[details withheld]";
  }

  // Imports make contacts by the million.
  private static List<String> stripped(List<String> values) {
    List<String> kept = new ArrayList<>(values.size());
    for (String value : values) {
      String text = value.strip();
      if (!text.isEmpty() && !kept.contains(text)) {
        kept.add(text);
      }
    }
    return List.copyOf(kept);
  }
}
