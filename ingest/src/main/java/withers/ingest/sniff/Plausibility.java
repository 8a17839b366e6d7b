package withers.ingest.sniff;

/**
 * Whether text reads like text. In the wrong character set, letters turn into signs in the middle
 * of words, or into capitals there.
 */
final class Plausibility {

  /** Share of characters beyond ASCII that may stand oddly, in percent. */
  private static final int ODD = 10;

  private Plausibility() {}

  static boolean isSensible(String text) {
    int beyond = 0;
    int odd = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (isControl(c)) {
        return false;
      }
      if (c > 0x7F) {
        beyond++;
        odd += isOdd(text, i) ? 1 : 0;
      }
    }
    return odd * 100 <= beyond * ODD;
  }

  private static boolean isControl(char c) {
    return Character.isISOControl(c) && c != '\n' && c != '\r' && c != '\t';
  }

  private static boolean isOdd(String text, int at) {
    char c = text.charAt(at);
    if (c == '\uFEFF' || Character.isSurrogate(c)) {
      return false;
    }
    if (!Character.isLetter(c) && Character.getType(c) != Character.NON_SPACING_MARK) {
      return isLetter(text, at - 1) && isLetter(text, at + 1) && c != '’';
    }
    return Character.isUpperCase(c) && isLetter(text, at - 1) && isLower(text, at + 1);
  }

  private static boolean isLetter(String text, int at) {
    return at >= 0 && at < text.length() && Character.isLetter(text.charAt(at));
  }

  private static boolean isLower(String text, int at) {
    return at < text.length() && Character.isLowerCase(text.charAt(at));
  }
}
