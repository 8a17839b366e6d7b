package withers.ingest;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/** Digests of texts. */
final class Digests {

  private Digests() {}

  /** The SHA-256 of texts of one line each, in lower-case hexadecimal. */
  static String of(List<String> lines) {
    try {
      byte[] bytes = String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java has no SHA-256", e);
    }
  }
}
