package withers.contacts;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import withers.contact.Contact;

/**
 * Makes contacts comparable. Safe for several threads when the phone key is.
 *
 * @param phoneKey turns a phone as written into its international number, or into an empty text
 */
record Normaliser(UnaryOperator<String> phoneKey) {

  ComparableContact comparable(Contact contact) {
    return new ComparableContact(
        nameWords(contact.fullName()),
        distinct(contact.phones(), phoneKey),
        distinct(contact.emails(), Normaliser::email),
        address(contact));
  }

  /** Nothing when a placeholder stands for the name. */
  private static List<String> nameWords(String name) {
    return Placeholders.isName(name) ? List.of() : words(name);
  }

  /** The words of a name, sorted, since files differ in which comes first. */
  static List<String> words(String name) {
    return Words.of(name).stream().sorted().toList();
  }

  private static List<String> address(Contact contact) {
    String postcode = Words.joined(contact.postcode());
    String line = contact.addressLines().stream().findFirst().map(Words::joined).orElse("");
    return postcode.isEmpty() || line.isEmpty() ? List.of() : List.of(postcode, line);
  }

  private static String email(String written) {
    String folded = Normalizer.normalize(written, Normalizer.Form.NFKC).toLowerCase(Locale.ROOT);
    return folded.contains("@") ? folded : "";
  }

  private static List<String> distinct(List<String> written, UnaryOperator<String> key) {
    Stream<String> keys = written.stream().map(key).filter(value -> !value.isEmpty());
    return keys.distinct().toList();
  }
}
