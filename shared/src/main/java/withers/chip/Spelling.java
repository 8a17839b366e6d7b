package withers.chip;

/**
 * A text reduced to ASCII capitals, digits and marks, so that every later step sees one spelling of
 * each sign; what no step knows becomes a question mark.
 */
final class Spelling {

  private static final int MINUS_SIGN = 0x2212;

  private Spelling() {}

  static String of(String text) {
    StringBuilder ascii = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); ) {
      int c = text.codePointAt(i);
      if (!isInvisible(c)) {
        ascii.append(sign(c));
      }
      i += Character.charCount(c);
    }
    return withoutSpreadsheetWrapping(ascii.toString().strip());
  }

  /** Whether the text shows nothing: blanks of any width and invisible signs only. */
  static boolean isBlank(String text) {
    return text.codePoints().allMatch(c -> isSpace(c) || isInvisible(c));
  }

  /** The text without the signs that group digits: space, dash, dot and star. */
  static String ungrouped(String spelling) {
    StringBuilder rest = new StringBuilder(spelling.length());
    for (int i = 0; i < spelling.length(); i++) {
      if (" -.*".indexOf(spelling.charAt(i)) < 0) {
        rest.append(spelling.charAt(i));
      }
    }
    return rest.toString();
  }

  private static char sign(int c) {
    if (Ascii.isDigit(c)) {
      return (char) c;
    }
    if (Character.isDigit(c)) {
      return (char) ('0' + Character.digit(c, 10));
    }
    if (isSpace(c)) {
      return ' ';
    }
    if (Character.getType(c) == Character.DASH_PUNCTUATION || c == MINUS_SIGN) {
      return '-';
    }
    return c < 128 ? asciiSign((char) c) : foreignSign(c);
  }

  private static boolean isSpace(int c) {
    return Character.isWhitespace(c) || Character.isSpaceChar(c);
  }

  private static boolean isInvisible(int c) {
    return Character.getType(c) == Character.FORMAT;
  }

  private static char asciiSign(char c) {
    return c >= 'a' && c <= 'z' ? (char) (c - 'a' + 'A') : c;
  }

  private static char foreignSign(int c) {
    return "\u2018\u2019\u02BC".indexOf(c) >= 0 ? '\'' : '?';
  }

  private static String withoutSpreadsheetWrapping(String text) {
    if (text.startsWith("=\"") && text.endsWith("\"") && text.length() > 3) {
      return text.substring(2, text.length() - 1).strip();
    }
    return withoutTrailingFraction(text.startsWith("'") ? text.substring(1).strip() : text);
  }

  /** Takes ".0" off a plain number; one that short would not be a chip's is left as it is. */
  private static String withoutTrailingFraction(String text) {
    int dot = text.length() - 2;
    return dot >= 8 && text.endsWith(".0") && Ascii.isDigits(text.substring(0, dot))
        ? text.substring(0, dot)
        : text;
  }
}
