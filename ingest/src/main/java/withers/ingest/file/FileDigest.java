package withers.ingest.file;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import withers.ingest.pack.PackedFile;

/**
 * The SHA-256 of a file's bytes, unpacked. It is made on another core while the file is looked
 * through and compared, and waited for when it is first needed. Two are equal when the digests are.
 */
public final class FileDigest {

  private static final int BUFFER = 1 << 18;

  private final CompletableFuture<String> hex;

  private FileDigest(CompletableFuture<String> hex) {
    this.hex = hex;
  }

  /** Starts to digest a file. */
  static FileDigest of(PackedFile place) {
    return new FileDigest(CompletableFuture.supplyAsync(() -> digest(place)));
  }

  private static String digest(PackedFile place) {
    MessageDigest sha = sha256();
    try (InputStream in = place.open()) {
      byte[] buffer = new byte[BUFFER];
      for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
        sha.update(buffer, 0, read);
      }
      return HexFormat.of().formatHex(sha.digest());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Has this done on a thread that is free then, once the digest is made; not when that fails.
   *
   * @param work throws nothing: nobody would see it
   */
  public void afterwards(Runnable work) {
    CompletableFuture<Void> unused = hex.thenRunAsync(work);
  }

  /**
   * The digest in lower-case hexadecimal.
   *
   * @throws UncheckedIOException when the file could not be read
   */
  public String hex() {
    try {
      return hex.join();
    } catch (CompletionException failed) {
      throw failed.getCause() instanceof RuntimeException cause ? cause : failed;
    }
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java has no SHA-256", e);
    }
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof FileDigest digest && hex().equals(digest.hex());
  }

  @Override
  public int hashCode() {
    return hex().hashCode();
  }

  @Override
  public String toString() {
    return hex();
  }
}
