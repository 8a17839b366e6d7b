package withers.contact;

/** Tells plain texts, which most are, from those that Unicode's normalisation may change. */
public final class Ascii {
  private Ascii() {}

  /**
   * Whether every character is below U+0080: such a text is its own normal form in all four of
   * Unicode's (Unicode Standard Annex 15).
   */
  public static boolean isAscii(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) >= 0x80) {
        return false;
      }
    }
    return true;
  }
}
