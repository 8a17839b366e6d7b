package withers.workspace;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.util.EnumSet;
import java.util.Set;
import withers.yaml.ConfigException;
import withers.yaml.ConfigProblem;
import withers.yaml.Place;

/** A password in a file of its own, which nobody but its owner may read. */
public final class PasswordFile {
  private static final Set<PosixFilePermission> OF_THE_OWNER =
      EnumSet.of(
          PosixFilePermission.OWNER_READ,
          PosixFilePermission.OWNER_WRITE,
          PosixFilePermission.OWNER_EXECUTE);

  private PasswordFile() {}

  /**
   * The first line of the file. Where the file system knows no permissions, none are asked for.
   *
   * @throws ConfigException when there is no such file, others may read or write it, or it is
   *     empty; the message never shows what is in it
   * @throws UncheckedIOException when it can't be read
   */
  public static String read(Path file) {
    try {
      requireOwnerOnly(file);
      return Files.readString(file, StandardCharsets.UTF_8)
          .lines()
          .findFirst()
          .filter(line -> !line.isEmpty())
          .orElseThrow(() -> refused(file, "a password in its first line", "none", ""));
    } catch (NoSuchFileException none) {
      throw refused(file, "a file with a password", "none", "make it, with mode 600");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void requireOwnerOnly(Path file) throws IOException {
    PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
    if (view != null && !OF_THE_OWNER.containsAll(view.readAttributes().permissions())) {
      throw refused(
          file,
          "a password file that only its owner can read",
          "one that others can, too",
          "chmod 600 it, and change the password if others may have seen it");
    }
  }

  private static ConfigException refused(Path file, String expected, String found, String advice) {
    return new ConfigException(
        new ConfigProblem(
            Place.of(file.toString()),
            "password-file",
            "Expected %s, but found %s".formatted(expected, found),
            advice));
  }
}
