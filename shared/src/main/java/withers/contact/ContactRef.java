package withers.contact;

/**
 * A reference to a contact in the vault: the id of the key that made it, and 128 bits of
 * HMAC-SHA-256 over the contact's frozen canonical form. Equal contacts have equal references;
 * unequal references may still be one person. References are pseudonymous personal data.
 */
public record ContactRef(int keyId, long high, long low) implements Comparable<ContactRef> {
  public ContactRef {
    if (keyId < 0 || keyId > 255) {
      throw new IllegalArgumentException("Expected a key id from 0 to 255, but found " + keyId);
    }
  }

  @Override
  public int compareTo(ContactRef other) {
    int byKey = Integer.compare(keyId, other.keyId);
    int byHigh = byKey != 0 ? byKey : Long.compareUnsigned(high, other.high);
    return byHigh != 0 ? byHigh : Long.compareUnsigned(low, other.low);
  }

  @Override
  public String toString() {
    return "%02x:%016x%016x".formatted(keyId, high, low);
  }
}
