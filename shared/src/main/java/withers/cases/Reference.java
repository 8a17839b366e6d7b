package withers.cases;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Locale;

/**
 * A short name of a follow-up, to quote on the phone: the same in every run, and nothing can be
 * read from it. Eight characters of SHA-256 over the case key, in an alphabet without 0, 1, I and
 * O. Two follow-ups may share one; the case key is their identity, not this.
 */
public final class Reference {

  private static final String ALPHABET = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
  private static final int LENGTH = 8;
  private static final int BITS = 5;
  private static final int DIGEST = 32;

  private Reference() {}

  /** The name of a follow-up. */
  public static String of(CaseKey key) {
    String text =
        String.join("\n", key.rule(), key.anchor().display(), key.actor().value(), key.recordKey());
    long end = ByteBuffer.wrap(sha256(text)).getLong(DIGEST - Long.BYTES);
    StringBuilder reference = new StringBuilder(LENGTH + 1);
    for (int i = 0; i < LENGTH; i++) {
      reference.append(i == LENGTH / 2 ? "-" : "").append(letter(end, i));
    }
    return reference.toString();
  }

  /** A reference as it is compared: people leave out the dash, and type small letters. */
  public static String plain(String reference) {
    return reference.toUpperCase(Locale.ROOT).replace("-", "").replace(" ", "");
  }

  /** One for each five bits of the digest, from its end. */
  private static char letter(long end, int index) {
    return ALPHABET.charAt((int) (end >>> index * BITS) & ALPHABET.length() - 1);
  }

  private static byte[] sha256(String text) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java has no SHA-256", e);
    }
  }
}
