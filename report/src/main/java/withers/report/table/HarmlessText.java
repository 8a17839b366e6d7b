package withers.report.table;

/**
 * Makes cells that spreadsheets take for text. A cell that begins like a formula is given a leading
 * apostrophe: with = + - @, tab, carriage return, line feed or NUL, or a full-width twin of the
 * signs (OWASP's page on CSV injection and ASVS 5.0, 1.2.10, united), also behind blanks.
 */
public final class HarmlessText {

  private static final String FORMULA_STARTS = "=+-@\t\r\n\0＝＋－＠";
  private static final String GUARD = "'";

  private HarmlessText() {}

  /** The text itself when it is harmless, else with an apostrophe before it. */
  public static String of(String text) {
    return startsLikeFormula(text) ? GUARD + text : text;
  }

  private static boolean startsLikeFormula(String text) {
    String behindBlanks = text.stripLeading();
    return startsWithOne(text) || startsWithOne(behindBlanks);
  }

  private static boolean startsWithOne(String text) {
    return !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
  }
}
