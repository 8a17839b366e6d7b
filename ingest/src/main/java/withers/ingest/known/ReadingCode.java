package withers.ingest.known;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A digest of the program itself: another program may read the same bytes differently. Of a jar,
 * its bytes and the names of the libraries beside it; of a folder of classes, all of them.
 */
public final class ReadingCode {

  private ReadingCode() {}

  /** The digest of the code that these classes came with; empty when it cannot be read. */
  public static Optional<String> digest(List<Class<?>> classes) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      for (Class<?> one : classes) {
        CodeSource source = one.getProtectionDomain().getCodeSource();
        take(Path.of(source.getLocation().toURI()), sha);
      }
      return Optional.of(HexFormat.of().formatHex(sha.digest()));
    } catch (IOException | URISyntaxException unreadable) {
      return Optional.empty();
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java has no SHA-256", e);
    }
  }

  private static void take(Path code, MessageDigest sha) throws IOException {
    if (Files.isDirectory(code)) {
      for (Path file : files(code)) {
        sha.update(code.relativize(file).toString().getBytes(StandardCharsets.UTF_8));
        sha.update(Files.readAllBytes(file));
      }
    } else {
      sha.update(Files.readAllBytes(code));
      for (Path beside : files(code.resolveSibling("."))) {
        sha.update(beside.getFileName().toString().getBytes(StandardCharsets.UTF_8));
      }
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).sorted().toList();
    }
  }
}
