package withers.contact;

import java.util.regex.Pattern;

/**
 * A reference to a contact in the vault: the id of the key that made it, and 128 bits of
 * HMAC-SHA-256 over the contact's frozen canonical form. Equal contacts have equal references;
 * unequal references may still be one person. References are pseudonymous personal data.
 */
public record ContactRef(int keyId, long high, long low) implements Comparable<ContactRef> {
  private static final Pattern SHAPE = Pattern.compile("[0-9a-f]{2}:[0-9a-f]{32}");

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
    if (!SHAPE.matcher(text).matches()) {
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

  @Override
  public int compareTo(ContactRef other) {
    int byKey = Integer.compare(keyId, other.keyId);
    int byHigh = byKey != 0 ? byKey : Long.compareUnsigned(high, other.high);
    return byHigh != 0 ? byHigh : Long.compareUnsigned(low, other.low);
  }

  /** Key id and code in hexadecimal: {@code 01:00112233445566778899aabbccddeeff}. */
  @Override
  public String toString() {
    return "%02x:%016x%016x".formatted(keyId, high, low);
  }
}
