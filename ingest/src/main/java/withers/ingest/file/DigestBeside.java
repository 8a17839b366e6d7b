package withers.ingest.file;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.concurrent.CompletableFuture;

/** A SHA-256 of bytes that is made on another core, beside whatever else is done with them. */
final class DigestBeside {

  private final MessageDigest sha = sha256();
  private CompletableFuture<Void> last = CompletableFuture.completedFuture(null);

  /**
   * Takes the next bytes once those before are done with. The caller leaves them as they are until
   * it has handed over the next, or asked for the result.
   */
  void take(byte[] bytes, int length) {
    last.join();
    last = CompletableFuture.runAsync(() -> sha.update(bytes, 0, length));
  }

  /** The digest of all of them, in lower-case hexadecimal. */
  String hex() {
    last.join();
    return HexFormat.of().formatHex(sha.digest());
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java has no SHA-256", e);
    }
  }
}
