package withers.report.mail;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * An address that mail can be sent to: a dot-atom of RFC 5322 before the sign, at least two labels
 * of letters, digits and dashes (RFC 1123) behind it, ASCII throughout, no longer than RFC 5321
 * allows. Narrower than the standards on purpose: quoted local parts, comments and address literals
 * are refused, and so is what looks like an encoded word; nothing that passes can end a header
 * line.
 */
record MailAddress(String value) {

  private static final int LONGEST = 254; // RFC 5321, with the erratum on its path limit
  private static final int LONGEST_LOCAL_PART = 64;
  private static final String ATOM = "[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+";
  private static final String LABEL = "[A-Za-z0-9](?:[A-Za-z0-9-]{0,61}[A-Za-z0-9])?";
  private static final Pattern SHAPE =
      Pattern.compile(ATOM + "(?:\\." + ATOM + ")*@" + LABEL + "(?:\\." + LABEL + ")+");

  /**
   * Takes an address.
   *
   * @throws IllegalArgumentException if it is none; the message does not repeat it
   */
  MailAddress {
    if (!isAddress(value)) {
      throw new IllegalArgumentException(
          "Expected a plain mail address such as \"post@example.org\", but found %d other characters"
              .formatted(value.length()));
    }
  }

  static boolean isAddress(String text) {
    return text.length() <= LONGEST
        && text.indexOf('@') <= LONGEST_LOCAL_PART
        && SHAPE.matcher(text).matches()
        && !(text.contains("=?") && text.contains("?="));
  }

  /** The part behind the sign, in lower case. */
  String domain() {
    return value.substring(value.indexOf('@') + 1).toLowerCase(Locale.ROOT);
  }
}
