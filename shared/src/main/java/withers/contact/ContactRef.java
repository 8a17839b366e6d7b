package withers.contact;

import java.util.HexFormat;

/**
 * A reference to a contact in the vault: the id of the key that made it, and 128 bits of
 * HMAC-SHA-256 over the contact's frozen canonical form. Equal contacts have equal references;
 * unequal references may still be one person. References are pseudonymous personal data.
 */
public record ContactRef(int keyId, long high, long low) implements Comparable<ContactRef> {
  private static final int LENGTH = 35;
  private static final int COLON = 2;

  public ContactRef {
    if (keyId < 0 || keyId > 255) {
      throw new IllegalArgumentException("Expected a key id from 0 to 255, but found " + keyId);
    }
  }

  /**
   * Takes the text form back.
   *
   * @throws IllegalArgumentException when the text is not one
   */
  public static ContactRef parse(String text) {
    if (!isOne(text)) {
      throw new IllegalArgumentException(
          "Expected a contact reference such as 01:00112233445566778899aabbccddeeff, but found "
              + text.length()
              + " other characters");
    }
    return new ContactRef(
        Integer.parseInt(text, 0, 2, 16),
        Long.parseUnsignedLong(text, 3, 19, 16),
        Long.parseUnsignedLong(text, 19, 35, 16));
  }

  /** Runs and logs hold millions of them: a pattern takes several times as long. */
  private static boolean isOne(String text) {
    boolean isOne = text.length() == LENGTH && text.charAt(COLON) == ':';
    for (int i = 0; isOne && i < LENGTH; i++) {
      isOne = i == COLON || isDigit(text.charAt(i));
    }
    return isOne;
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9' || c >= 'a' && c <= 'f';
  }

  @Override
  public int compareTo(ContactRef other) {
    int byKey = Integer.compare(keyId, other.keyId);
    int byHigh = byKey != 0 ? byKey : Long.compareUnsigned(high, other.high);
    return byHigh != 0 ? byHigh : Long.compareUnsigned(low, other.low);
  }

  /** Key id and code in hexadecimal: {@code 01:00112233445566778899aabbccddeeff}. */
  @Override
  public String toString() {
    HexFormat hex = HexFormat.of(); // a run writes millions: a pattern takes ten times as long
    return hex.toHexDigits((byte) keyId) + ":" + hex.toHexDigits(high) + hex.toHexDigits(low);
  }
}
