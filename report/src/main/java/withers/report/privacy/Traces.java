package withers.report.privacy;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import withers.contact.Contact;

/**
 * What gives people away in a text or in the bytes of a file: their e-mail addresses, their phones'
 * last digits, and their names in one piece. Compared without what stands between letters and
 * digits, so that cells and spellings don't matter; a namesake is found, too.
 */
public final class Traces {

  /** Country code and trunk zero are written or not; these digits are. */
  private static final int LAST_DIGITS = 9;

  private static final int FEWEST_DIGITS = 7;
  private static final int SHORTEST_NAME = 5;

  /** NUL bytes are left out, so text in UTF-16 that Latin-1 can write reads like Latin-1. */
  private static final List<Charset> CHARSETS =
      List.of(
          StandardCharsets.UTF_8,
          StandardCharsets.ISO_8859_1,
          StandardCharsets.UTF_16LE,
          StandardCharsets.UTF_16BE);

  private final Set<String> words = new LinkedHashSet<>();
  private final Set<String> bytes = new LinkedHashSet<>();

  private Traces() {}

  /** What gives any of these away. */
  public static Traces of(Collection<Contact> people) {
    Traces traces = new Traces();
    people.stream().flatMap(Traces::words).forEach(traces::add);
    return traces;
  }

  private static Stream<String> words(Contact contact) {
    Stream<String> phones =
        contact.phones().stream()
            .map(phone -> phone.replaceAll("[^0-9]", ""))
            .filter(digits -> digits.length() >= FEWEST_DIGITS)
            .map(digits -> digits.substring(Math.max(0, digits.length() - LAST_DIGITS)));
    Stream<String> names =
        names(contact).map(Traces::squeezed).filter(name -> name.length() >= SHORTEST_NAME);
    Stream<String> emails = contact.emails().stream().map(Traces::squeezed);
    return Stream.of(phones, emails, names).flatMap(all -> all).filter(word -> !word.isEmpty());
  }

  /** Given name first, and family name first; of a name of one word alone nothing can be told. */
  private static Stream<String> names(Contact contact) {
    List<String> parts = Arrays.asList(contact.fullName().split("[\\s,]+"));
    if (parts.size() < 2) {
      return Stream.empty();
    }
    String last = parts.get(parts.size() - 1);
    String others = String.join("", parts.subList(0, parts.size() - 1));
    Stream<String> apart =
        contact.familyName().isEmpty()
            ? Stream.of(last + others)
            : Stream.of(contact.familyName() + contact.givenName());
    return Stream.concat(Stream.of(others + last), apart);
  }

  private void add(String word) {
    words.add(word);
    for (Charset charset : CHARSETS) {
      bytes.add(squeezed(word.getBytes(charset), word.length() * 4));
      bytes.add(squeezed(word.toUpperCase(Locale.ROOT).getBytes(charset), word.length() * 4));
    }
  }

  /** Whether nothing can be looked for. */
  public boolean isEmpty() {
    return words.isEmpty();
  }

  /** Whether a text gives one of them away. */
  public boolean in(String text) {
    String closed = squeezed(text);
    return words.stream().anyMatch(closed::contains);
  }

  private static String squeezed(String text) {
    return text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{M}\\p{N}@]", "");
  }

  /** Whether bytes that {@link #squeezed(byte[], int)} gave do. */
  boolean inSqueezed(String squeezed) {
    return bytes.stream().anyMatch(squeezed::contains);
  }

  /** The most of what was read before that one of them may begin in. */
  int longest() {
    return bytes.stream().mapToInt(String::length).max().orElse(0);
  }

  /** Bytes as characters: letters, digits and the sign of e-mail, and all that is not ASCII. */
  static String squeezed(byte[] bytes, int length) {
    StringBuilder kept = new StringBuilder(Math.min(bytes.length, length));
    for (int i = 0; i < Math.min(bytes.length, length); i++) {
      int one = bytes[i] & 0xff;
      if (one >= 'A' && one <= 'Z') {
        kept.append((char) (one + ('a' - 'A')));
      } else if (one >= 'a' && one <= 'z'
          || one >= '0' && one <= '9'
          || one == '@'
          || one >= 0x80) {
        kept.append((char) one);
      }
    }
    return kept.toString();
  }
}
