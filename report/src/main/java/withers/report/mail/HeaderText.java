package withers.report.mail;

import withers.report.text.OneLine;

/**
 * Text from settings and records, fit for a header of a mail. It stays on its line, and it is read
 * as it is written: what looks like an encoded word (RFC 2047) would else be decoded by its reader,
 * and show something that nobody has seen before.
 */
final class HeaderText {
  private static final String ENCODED_WORD = "=?";

  private HeaderText() {}

  static String of(String text) {
    return OneLine.of(text).replace(ENCODED_WORD, "= ?");
  }
}
