package withers.contact;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * The secret behind the references: without it, nobody can tell from a reference whether a known
 * person is meant. Losing it means that no reference can be made anew. The text form never shows
 * it. Safe for several threads.
 */
public final class VaultKey {

  /** Length of the secret in bytes. */
  public static final int LENGTH = 32;

  /** The largest key id. */
  public static final int LARGEST_ID = 255;

  private static final String ALGORITHM = "HmacSHA256";

  private final int id;
  private final byte[] secret;
  private final Mac prototype;

  /**
   * @param id which key this is, 0 to 255; every reference carries it
   * @param secret 32 bytes, copied
   * @throws IllegalArgumentException when either is out of range
   */
  public VaultKey(int id, byte[] secret) {
    if (id < 0 || id > LARGEST_ID) {
      throw new IllegalArgumentException("Expected a key id from 0 to 255, but found " + id);
    }
    if (secret.length != LENGTH) {
      throw new IllegalArgumentException(
          "Expected a vault key of %d bytes, but found %d".formatted(LENGTH, secret.length));
    }
    this.id = id;
    this.secret = secret.clone();
    this.prototype = mac(this.secret);
  }

  /** A new key from the system's source of secure randomness. */
  public static VaultKey random(int id) {
    byte[] secret = new byte[LENGTH];
    new SecureRandom().nextBytes(secret);
    return new VaultKey(id, secret);
  }

  public int id() {
    return id;
  }

  /**
   * The reference of a contact: HMAC-SHA-256 (RFC 2104, FIPS 180-4) of its form, cut to 128 bits.
   */
  public ContactRef reference(Contact contact) {
    ByteBuffer code = ByteBuffer.wrap(code(CanonicalForm.of(contact)));
    return new ContactRef(id, code.getLong(), code.getLong());
  }

  /**
   * Tells this key from any other without giving it away: a vault keeps it to notice a wrong key.
   */
  public byte[] proof() {
    return code("withers contact vault".getBytes(StandardCharsets.UTF_8));
  }

  /** All 32 bytes of the message's authentication code. */
  byte[] code(byte[] message) {
    try {
      return ((Mac) prototype.clone()).doFinal(message);
    } catch (CloneNotSupportedException e) {
      throw new IllegalStateException("This Java's " + ALGORITHM + " can't be cloned", e);
    }
  }

  /** The secret itself, for writing the key file. */
  byte[] secret() {
    return secret.clone();
  }

  @Override
  public String toString() {
    return "VaultKey[id=" + id + "]";
  }

  private static Mac mac(byte[] secret) {
    try {
      Mac mac = Mac.getInstance(ALGORITHM);
      mac.init(new SecretKeySpec(secret, ALGORITHM));
      return mac;
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("This Java has no " + ALGORITHM, e);
    }
  }
}
