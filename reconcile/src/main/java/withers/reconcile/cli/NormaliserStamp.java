package withers.reconcile.cli;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.matching.form.NormalForms;

/**
 * What tells one maker of normal forms from another that might read a contact otherwise: the
 * region, this Java (whose tables of Unicode take part), the names of the libraries' files, which
 * state their versions, and a digest of the code and the word lists.
 */
final class NormaliserStamp {

  private NormaliserStamp() {}

  /**
   * The stamp of this program's maker.
   *
   * @param region whose rules read a phone without a country code
   * @return empty when the program's own code can't be read
   */
  static Optional<String> of(String region) {
    try {
      String java = "java " + Runtime.version().feature();
      return Optional.of(String.join("; ", region, java, libraries(), "code " + digest()));
    } catch (IOException unreadable) {
      return Optional.empty();
    }
  }

  private static String libraries() throws IOException {
    StringBuilder names = new StringBuilder();
    for (Class<?> one : NormalForms.libraries()) {
      names.append(names.isEmpty() ? "" : ", ").append(origin(one).getFileName());
    }
    return names.toString();
  }

  private static String digest() throws IOException {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      for (Class<?> one : NormalForms.code()) {
        take(origin(one), one.getPackageName().replace('.', '/'), sha);
      }
      return HexFormat.of().formatHex(sha.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java has no SHA-256", e);
    }
  }

  private static Path origin(Class<?> one) throws IOException {
    try {
      return Path.of(one.getProtectionDomain().getCodeSource().getLocation().toURI());
    } catch (URISyntaxException e) {
      throw new IOException(e);
    }
  }

  private static void take(Path origin, String folder, MessageDigest sha) throws IOException {
    if (Files.isDirectory(origin)) {
      takeAll(origin.resolve(folder), sha);
    } else {
      try (FileSystem jar = FileSystems.newFileSystem(origin)) {
        takeAll(jar.getPath(folder), sha);
      }
    }
  }

  private static void takeAll(Path folder, MessageDigest sha) throws IOException {
    for (Path file : files(folder)) {
      sha.update(file.getFileName().toString().getBytes(StandardCharsets.UTF_8));
      sha.update(Files.readAllBytes(file));
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(Files::isRegularFile).sorted().collect(Collectors.toList());
    }
  }
}
