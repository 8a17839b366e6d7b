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
import java.util.Comparator;
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
      take(one, one.getPackageName().replace('.', '/'), 1, sha);
    }
    return HexFormat.of().formatHex(sha.digest());
  }

  /** The digest of a text. */
  static String of(String text) {
    return HexFormat.of().formatHex(sha().digest(text.getBytes(StandardCharsets.UTF_8)));
  }

  static MessageDigest sha() {
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

  /** Takes all files of a folder, from where a class comes from. */
  static void takeAll(Class<?> one, String folder, MessageDigest sha) throws IOException {
    take(one, folder, Integer.MAX_VALUE, sha);
  }

  private static void take(Class<?> one, String folder, int depth, MessageDigest sha)
      throws IOException {
    Path origin = origin(one);
    if (Files.isDirectory(origin)) {
      take(origin.resolve(folder), depth, sha);
    } else {
      try (FileSystem jar = FileSystems.newFileSystem(origin)) {
        take(jar.getPath(folder), depth, sha);
      }
    }
  }

  private static void take(Path folder, int depth, MessageDigest sha) throws IOException {
    for (Path file : files(folder, depth)) {
      sha.update(name(folder, file).getBytes(StandardCharsets.UTF_8));
      sha.update(Files.readAllBytes(file));
    }
  }

  private static String name(Path folder, Path file) {
    return folder.relativize(file).toString().replace('\\', '/');
  }

  private static List<Path> files(Path folder, int depth) throws IOException {
    try (Stream<Path> files = Files.walk(folder, depth)) {
      return files
          .filter(Files::isRegularFile)
          .sorted(Comparator.comparing(file -> name(folder, file)))
          .collect(Collectors.toList());
    }
  }
}
