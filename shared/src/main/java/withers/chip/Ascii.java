package withers.chip;

/** Questions about texts that hold ASCII only. */
final class Ascii {

  private Ascii() {}

  static boolean isDigit(int c) {
    return c >= '0' && c <= '9';
  }

  static boolean isCapital(int c) {
    return c >= 'A' && c <= 'Z';
  }

  static boolean isLetter(int c) {
    return isCapital(c) || c >= 'a' && c <= 'z';
  }

  static boolean isHexadecimal(int c) {
    return isDigit(c) || c >= 'A' && c <= 'F';
  }

  static boolean isDigits(String text) {
    int digits = 0;
    while (digits < text.length() && isDigit(text.charAt(digits))) {
      digits++;
    }
    return digits > 0 && digits == text.length();
  }

  static boolean isHexadecimal(String text) {
    return text.chars().allMatch(Ascii::isHexadecimal);
  }

  static boolean isDigitsAndCapitals(String text) {
    return text.chars().allMatch(c -> isDigit(c) || isCapital(c));
  }
}
