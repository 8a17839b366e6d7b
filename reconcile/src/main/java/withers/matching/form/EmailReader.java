package withers.matching.form;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Reads the e-mail addresses of a field, which may hold several, with names beside them. */
final class EmailReader {
  private static final int LONGEST = 254; // RFC 5321, with its erratum 1690

  private static final String PLAIN_SIGNS = "@._-+";

  /** What comes along when an address is copied, such as a space of no width. */
  private static final Pattern UNSEEN = Pattern.compile("\\p{Cf}+");

  private static final Pattern AROUND_AT = Pattern.compile("[\\s.]*@[\\s.]*");
  private static final Pattern DOTS = Pattern.compile("\\.{2,}");
  private static final Pattern REMARK = Pattern.compile("\\([^()@]*\\)");
  private static final Pattern AT_IN_WORDS =
      Pattern.compile("\\s*[(\\[]\\s*(?:at|ät)\\s*[)\\]]\\s*");
  private static final Pattern STOP_IN_WORDS =
      Pattern.compile("\\s*[(\\[]\\s*(?:dot|punkt|point|punto|ponto)\\s*[)\\]]\\s*");
  private static final Pattern COMMA_FOR_STOP =
      Pattern.compile("(?<=@[^\\s,;@]{1,63}),(?=[^\\s,;@]+(?:[\\s;]|$))");

  /** Spaces at the only full stop of a domain: {@code ann@example. org}. */
  private static final Pattern SPACES_AT_STOP =
      Pattern.compile("(?<=@[^\\s.,;@]{1,63})\\s*\\.\\s*(?=\\p{L}{2,63}(?:[\\s;,>]|$))");

  private static final Pattern BETWEEN = Pattern.compile("[\\s;,<>|\"/]+");
  private static final Pattern SCHEME = Pattern.compile("^(?:mailto|e-?mail|mail):\\s*");
  private static final Pattern EDGES = Pattern.compile("^[.'()\\[\\]:]+|[.'()\\[\\]:-]+$");

  /** No mailbox has RFC 5322's special signs unless in quotes; a domain has letters, digits, -. */
  private static final Pattern ONE =
      Pattern.compile("[^@()\\[\\]:\\\\\\p{Cntrl}]+@[\\p{L}\\p{M}\\p{N}._-]+");

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
  static List<Email> read(String written) {
    List<Email> kept = new ArrayList<>(1);
    if (isPlain(written)) {
      keep(written.toLowerCase(Locale.ROOT), kept);
    } else {
      several(written).forEach(one -> keep(one, kept));
    }
    return kept;
  }

  /** One address and nothing beside it, of the characters that nearly all are made of. */
  private static boolean isPlain(String written) {
    int ats = 0;
    boolean afterStop = false;
    for (int i = 0; i < written.length(); i++) {
      char c = written.charAt(i);
      boolean stop = c == '.' || c == '@';
      ats += c == '@' ? 1 : 0;
      if (stop && afterStop || !Fold.isAsciiOfWord(c) && PLAIN_SIGNS.indexOf(c) < 0) {
        return false;
      }
      afterStop = stop;
    }
    return ats == 1 && !isSignAt(written, 0) && !isSignAt(written, written.length() - 1);
  }

  private static boolean isSignAt(String written, int at) {
    return PLAIN_SIGNS.indexOf(written.charAt(at)) >= 0;
  }

  private static Stream<String> several(String written) {
    String shown = UNSEEN.matcher(written).replaceAll("");
    String folded = Normalizer.normalize(shown, Normalizer.Form.NFKC).toLowerCase(Locale.ROOT);
    if (folded.length() > 10 * LONGEST) {
      return Stream.empty();
    }
    String at = AT_IN_WORDS.matcher(SCHEME.matcher(folded).replaceFirst("")).replaceAll("@");
    String signs = STOP_IN_WORDS.matcher(at).replaceAll(".");
    String plain = AROUND_AT.matcher(withoutRemarks(signs)).replaceAll("@");
    return BETWEEN
        .splitAsStream(withStops(plain))
        .map(one -> EDGES.matcher(one).replaceAll(""))
        .filter(one -> ONE.matcher(one).matches());
  }

  /** One full stop where there are two, or spaces beside it, or a comma for it. */
  private static String withStops(String text) {
    String close = SPACES_AT_STOP.matcher(DOTS.matcher(text).replaceAll(".")).replaceAll(".");
    return COMMA_FOR_STOP.matcher(close).replaceAll(".");
  }

  /** Brackets may stand in brackets. */
  private static String withoutRemarks(String text) {
    String less = text;
    for (Matcher remark = REMARK.matcher(less); remark.find(); remark = REMARK.matcher(less)) {
      less = remark.replaceAll(" ");
    }
    return less;
  }

  private static void keep(String address, List<Email> kept) {
    if (address.length() <= LONGEST) {
      Email email = one(address);
      if (!email.mailbox().isEmpty() && !PLACEHOLDERS.contains(email.mailbox())) {
        kept.add(email);
      }
    }
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
