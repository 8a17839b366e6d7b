package withers.matching.form;

import java.util.regex.Pattern;

/** What a word of an address with digits, or of one letter, can be. */
final class HouseNumbers {
  private static final Pattern NUMBER = Pattern.compile("\\d{1,5}[a-z]{0,2}");
  private static final Pattern UNIT_IN_ONE = Pattern.compile("(?:u|apt|flat|fl|unit|no)\\d+[a-z]?");
  private static final Pattern ORDINAL = Pattern.compile("\\d+(?:st|nd|rd|th|er|eme)");
  private static final Pattern LETTER = Pattern.compile("[a-z]");
  private static final Pattern FLOOR = Pattern.compile("\\d+[ºª°].?");
  private static final Pattern ZEROS = Pattern.compile("^0+(?=\\d)");
  private static final Pattern DIGITS = Pattern.compile("\\d+");
  private static final Pattern UNIT = Pattern.compile("\\d{1,5}[a-z]{0,2}|[a-z]\\d{0,4}|\\d+[oa]");

  private HouseNumbers() {}

  /** A house's number, with its letter: {@code 12a}. */
  static boolean isNumber(Token token) {
    return startsWithDigit(token.text())
        && NUMBER.matcher(token.text()).matches()
        && !ORDINAL.matcher(token.text()).matches()
        && !isFloor(token);
  }

  /** {@code 3º}. */
  static boolean isFloor(Token token) {
    return startsWithDigit(token.written()) && FLOOR.matcher(token.written()).matches();
  }

  /** What may name a flat: {@code 4}, {@code b}, {@code b4}. */
  static boolean isUnit(Token token) {
    return UNIT.matcher(token.text()).matches();
  }

  /** {@code apt4}. */
  static boolean isUnitInOne(String text) {
    return hasDigit(text) && UNIT_IN_ONE.matcher(text).matches();
  }

  static boolean isLetter(String text) {
    return LETTER.matcher(text).matches();
  }

  static boolean isDigits(String text) {
    return DIGITS.matcher(text).matches();
  }

  static String withoutZeros(String number) {
    return number.startsWith("0") ? ZEROS.matcher(number).replaceFirst("") : number;
  }

  private static boolean startsWithDigit(String text) {
    return text.charAt(0) >= '0' && text.charAt(0) <= '9';
  }

  private static boolean hasDigit(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) >= '0' && text.charAt(i) <= '9') {
        return true;
      }
    }
    return false;
  }
}
