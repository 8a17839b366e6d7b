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
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Digests of the program's own code and the files that lie beside it. */
final class CodeDigest {
  private CodeDigest() {}

  /** The digest of the packages that these classes stand in. */
  static String of(List<Class<?>> classes) throws IOException {
    MessageDigest sha = sha();
    for (Class<?> one : classes) {
      take(origin(one), one.getPackageName().replace('.', '/'), sha);
    }
    return HexFormat.of().formatHex(sha.digest());
  }

  /** The digest of a text. */
  static String of(String text) {
    return HexFormat.of().formatHex(sha().digest(text.getBytes(StandardCharsets.UTF_8)));
  }

  private static MessageDigest sha() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java has no SHA-256", e);
    }
  }

  /** The folder or jar that a class comes from. */
  static Path origin(Class<?> one) throws IOException {
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
