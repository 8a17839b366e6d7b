package withers.text;

/**
 * Makes cells that spreadsheets take for text. A cell that begins like a formula is given a leading
 * apostrophe: with = + - @, tab, carriage return, line feed or NUL, or a full-width twin of the
 * signs (OWASP's page on CSV injection and ASVS 5.0, 1.2.10, united), also behind blanks.
 */
public final class HarmlessText {

  /** What goes before a cell that is guarded. */
  public static final String GUARD = "'";

  private static final String FORMULA_STARTS = "=+-@\t\r\n\0＝＋－＠";

  private HarmlessText() {}

  /** The text itself when it is harmless, else with an apostrophe before it. */
  public static String of(String text) {
    return startsLikeFormula(text) ? GUARD + text : text;
  }

  /** Whether a spreadsheet may run it. */
  public static boolean startsLikeFormula(String text) {
    int first = 0;
    while (first < text.length() && isBlank(text.charAt(first))) {
      first++;
    }
    return startsWithOne(text, 0) || startsWithOne(text, first);
  }

  private static boolean startsWithOne(String text, int at) {
    return at < text.length() && FORMULA_STARTS.indexOf(text.charAt(at)) >= 0;
  }

  /** White space, spaces at which no line breaks, and signs without a width. */
  private static boolean isBlank(char c) {
    return Character.isWhitespace(c)
        || Character.isSpaceChar(c)
        || Character.getType(c) == Character.FORMAT;
  }
}
