package withers.report.html;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.Objects;

/**
 * A script that stands in a page as it is. The page's policy allows these very bytes and nothing
 * else, so that no text from a record can ever run.
 */
public record Script(String text) {

  /** Reads one of the scripts beside this class. */
  static Script named(String name) {
    try (InputStream bytes = Objects.requireNonNull(Script.class.getResourceAsStream(name), name)) {
      return new Script(new String(bytes.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What a page's policy says of it, to follow other directives (Content Security Policy 3). */
  public String policy() {
    return "; script-src 'sha256-%s'".formatted(Base64.getEncoder().encodeToString(sha256()));
  }

  private byte[] sha256() {
    try {
      return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java has SHA-256", e);
    }
  }
}
