package withers.contacts;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import withers.contact.Contact;

/**
 * Makes contacts comparable. Safe for several threads when the phone key is.
 *
 * @param phoneKey turns a phone as written into its international number, or into an empty text
 */
record Normaliser(UnaryOperator<String> phoneKey) {

  /**
   * The blocks of combining marks that other letters carry as accents. Marks that belong to a
   * script's own spelling (vowel signs, points, voicing) stay, so that no name loses its meaning.
   */
  private static final Pattern ACCENTS =
      Pattern.compile(
          "[\\u0300-\\u036f\\u1ab0-\\u1aff\\u1dc0-\\u1dff\\u20d0-\\u20ff\\ufe20-\\ufe2f]+");

  private static final Pattern DROPPED = Pattern.compile("[.'’‘`ʼ]+");
  private static final Pattern BETWEEN_WORDS = Pattern.compile("[^\\p{L}\\p{M}\\p{N}]+");

  ComparableContact comparable(Contact contact) {
    return new ComparableContact(
        words(contact.fullName()),
        distinct(contact.phones(), phoneKey),
        distinct(contact.emails(), Normaliser::email),
        address(contact));
  }

  static List<String> words(String name) {
    String joined = DROPPED.matcher(folded(name)).replaceAll("");
    return Arrays.stream(BETWEEN_WORDS.split(joined)).filter(w -> !w.isEmpty()).sorted().toList();
  }

  private static List<String> address(Contact contact) {
    String postcode = lettersAndDigits(contact.postcode());
    String line =
        contact.addressLines().stream().findFirst().map(Normaliser::lettersAndDigits).orElse("");
    return postcode.isEmpty() || line.isEmpty() ? List.of() : List.of(postcode, line);
  }

  private static String lettersAndDigits(String text) {
    return BETWEEN_WORDS.matcher(folded(text)).replaceAll("");
  }

  private static String email(String written) {
    String folded = Normalizer.normalize(written, Normalizer.Form.NFKC).toLowerCase(Locale.ROOT);
    return folded.contains("@") ? folded : "";
  }

  /** Upper case first: some letters have no lower case of their own to fold to, such as ß. */
  private static String folded(String text) {
    String plain = Normalizer.normalize(text, Normalizer.Form.NFKD);
    String bare = ACCENTS.matcher(plain).replaceAll("");
    return bare.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
  }

  private static List<String> distinct(List<String> written, UnaryOperator<String> key) {
    Stream<String> keys = written.stream().map(key).filter(value -> !value.isEmpty());
    return keys.distinct().toList();
  }
}
