package withers.matching.form;

import java.text.Normalizer;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Reads the e-mail addresses of a field, which may hold several, with names beside them. */
final class EmailReader {
  private static final int LONGEST = 254; // RFC 5321, with its erratum 1690

  private static final String PLAIN_SIGNS = "@._-+";
  private static final Pattern SPACES_AROUND = Pattern.compile("\\s*@\\s*");
  private static final Pattern AT_IN_WORDS =
      Pattern.compile("\\s*[(\\[]\\s*(?:at|ät)\\s*[)\\]]\\s*");
  private static final Pattern COMMA_FOR_STOP =
      Pattern.compile("(?<=@[^\\s,;@]{1,63}),(?=[^\\s,;@]+(?:[\\s;]|$))");
  private static final Pattern BETWEEN = Pattern.compile("[\\s;,<>|\"/]+");
  private static final Pattern SCHEME = Pattern.compile("^(?:mailto|e-?mail|mail):\\s*");
  private static final Pattern EDGES = Pattern.compile("^[.'()\\[\\]:]+|[.'()\\[\\]:]+$");
  private static final Pattern ONE = Pattern.compile("[^@\\p{Cntrl}]+@[^@\\p{Cntrl}]+");

  /** Mailboxes that a clerk invents when the field must not be empty (our judgement). */
  private static final Set<String> PLACEHOLDERS =
      Set.of(
          "none",
          "noemail",
          "no-email",
          "no.email",
          "no_email",
          "nomail",
          "noreply",
          "no-reply",
          "donotreply",
          "na",
          "n.a",
          "no",
          "nil",
          "unknown",
          "notgiven",
          "not.given",
          "declined",
          "refused",
          "withheld",
          "xxx",
          "xx",
          "x",
          "test",
          "sinemail",
          "nocorreo",
          "keine",
          "kein",
          "keinemail",
          "keine.email",
          "inconnu",
          "aucun",
          "brak",
          "nobody",
          "noone",
          "null",
          "email",
          "example",
          "abc",
          "a");

  private EmailReader() {}

  /** The addresses of one field: none when nothing in it is one. */
  static Stream<Email> read(String written) {
    return isPlain(written)
        ? kept(Stream.of(written.toLowerCase(Locale.ROOT)))
        : kept(several(written));
  }

  /** One address and nothing beside it, of the characters that nearly all are made of. */
  private static boolean isPlain(String written) {
    int ats = 0;
    for (int i = 0; i < written.length(); i++) {
      char c = written.charAt(i);
      ats += c == '@' ? 1 : 0;
      if (!Fold.isAsciiOfWord(c) && PLAIN_SIGNS.indexOf(c) < 0) {
        return false;
      }
    }
    return ats == 1 && !isSignAt(written, 0) && !isSignAt(written, written.length() - 1);
  }

  private static boolean isSignAt(String written, int at) {
    return PLAIN_SIGNS.indexOf(written.charAt(at)) >= 0;
  }

  private static Stream<String> several(String written) {
    String folded = Normalizer.normalize(written, Normalizer.Form.NFKC).toLowerCase(Locale.ROOT);
    if (folded.length() > 10 * LONGEST) {
      return Stream.empty();
    }
    String at = AT_IN_WORDS.matcher(SCHEME.matcher(folded).replaceFirst("")).replaceAll("@");
    String close = SPACES_AROUND.matcher(at).replaceAll("@");
    String stops = COMMA_FOR_STOP.matcher(close).replaceAll(".");
    return BETWEEN
        .splitAsStream(stops)
        .map(one -> EDGES.matcher(one).replaceAll(""))
        .filter(one -> ONE.matcher(one).matches());
  }

  private static Stream<Email> kept(Stream<String> addresses) {
    return addresses
        .filter(address -> address.length() <= LONGEST)
        .map(EmailReader::one)
        .filter(email -> !email.mailbox().isEmpty() && !PLACEHOLDERS.contains(email.mailbox()));
  }

  private static Email one(String address) {
    int at = address.lastIndexOf('@');
    String local = address.substring(0, at);
    int plus = local.indexOf('+');
    String mailbox = plus > 0 ? local.substring(0, plus) : local;
    String tag = plus > 0 ? local.substring(plus + 1) : "";
    return new Email(mailbox, address.substring(at + 1), tag, letters(mailbox));
  }

  private static String letters(String mailbox) {
    StringBuilder letters = new StringBuilder(mailbox.length());
    mailbox.codePoints().filter(Character::isLetter).forEach(letters::appendCodePoint);
    return letters.toString();
  }
}
