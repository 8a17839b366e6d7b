package withers.report.list;

import java.util.List;
import java.util.stream.Stream;
import withers.contact.Contact;
import withers.report.text.OneLine;

/**
 * Whom to call.
 *
 * @param name the person or organisation
 * @param why what they have to do with it
 * @param phones as the record has them, possibly none
 * @param address in one line, possibly empty
 */
public record Callee(
    String name, String why, List<String> phones, List<String> emails, String address) {
  public Callee {
    phones = List.copyOf(phones);
    emails = List.copyOf(emails);
  }

  static Callee of(String name, String why, Contact contact) {
    return new Callee(
        name, why, lines(contact.phones()), lines(contact.emails()), address(contact));
  }

  /** A number to dial: digits and a leading plus sign; empty when the text has no digits. */
  public static String dialled(String phone) {
    String digits = phone.replaceAll("[^0-9]", "");
    return phone.startsWith("+") && !digits.isEmpty() ? "+" + digits : digits;
  }

  private static List<String> lines(List<String> texts) {
    return texts.stream().map(OneLine::of).filter(text -> !text.isEmpty()).toList();
  }

  private static String address(Contact contact) {
    Stream<String> town = Stream.of(contact.postcode(), contact.town()).map(OneLine::of);
    String place = String.join(" ", town.filter(text -> !text.isEmpty()).toList());
    Stream<String> rest = Stream.of(place, contact.region(), contact.country());
    Stream<String> all = Stream.concat(contact.addressLines().stream(), rest);
    return String.join(", ", all.map(OneLine::of).filter(text -> !text.isEmpty()).toList());
  }
}
