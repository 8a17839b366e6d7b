package withers.contact;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.HexFormat;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The file that holds the vault's key, for its owner's eyes alone. It belongs into the backup,
 * apart from the log: without it no reference can be made anew, and who has it can test whom a
 * reference means.
 */
public final class VaultKeyFile {

  private static final int LARGEST = 1000;
  private static final Pattern CONTENT =
      Pattern.compile(
          "withers contact vault key, format 1\\R"
              + "id ([0-9]{1,3})\\R"
              + "secret ([0-9a-f]{64})\\R?");
  private static final FileAttribute<Set<PosixFilePermission>> OWNER_ONLY =
      PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"));

  private VaultKeyFile() {}

  /**
   * Writes a new key, whole or not at all.
   *
   * @throws VaultUnavailableException when the file is there already, or can't be written
   */
  public static void create(Path file, VaultKey key) {
    String content =
        "withers contact vault key, format 1\nid %d\nsecret %s\n"
            .formatted(key.id(), HexFormat.of().formatHex(key.secret()));
    Path fresh = file.resolveSibling(file.getFileName() + ".new");
    try {
      write(fresh, content);
      try {
        Files.move(fresh, file);
      } finally {
        Files.deleteIfExists(fresh);
      }
    } catch (FileAlreadyExistsException e) {
      throw new VaultUnavailableException(
          "Expected no vault key yet, but found one; it is never overwritten: " + file, e);
    } catch (IOException e) {
      throw new VaultUnavailableException(
          "The vault key can't be written; see that its folder exists and may be written: " + file,
          e);
    }
  }

  /** A file that an earlier attempt left behind was never a key: nothing was stored with it. */
  private static void write(Path fresh, String content) throws IOException {
    Files.deleteIfExists(fresh);
    try (FileChannel channel = FileChannel.open(fresh, options(), attributes(fresh))) {
      ByteBuffer bytes = StandardCharsets.UTF_8.encode(content);
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
      channel.force(true);
    }
  }

  /**
   * Reads a key.
   *
   * @throws VaultUnavailableException when the file is missing, is not a key, or may be read by
   *     others than its owner
   */
  public static VaultKey load(Path file) {
    try {
      requireOwnerOnly(file);
      return parse(file, Files.size(file) > LARGEST ? "" : Files.readString(file));
    } catch (NoSuchFileException e) {
      throw new VaultUnavailableException(
          "Expected the vault key, but found no file; restore it from its backup: " + file, e);
    } catch (IOException e) {
      throw new VaultUnavailableException("The vault key can't be read: " + file, e);
    }
  }

  private static VaultKey parse(Path file, String content) {
    Matcher matcher = CONTENT.matcher(content);
    if (!matcher.matches() || Integer.parseInt(matcher.group(1)) > VaultKey.LARGEST_ID) {
      throw new VaultUnavailableException(
          "Expected a vault key of format 1, but found other content; restore it from its backup: "
              + file);
    }
    byte[] secret = HexFormat.of().parseHex(matcher.group(2));
    return new VaultKey(Integer.parseInt(matcher.group(1)), secret);
  }

  private static void requireOwnerOnly(Path file) throws IOException {
    if (isPosix(file)) {
      Set<PosixFilePermission> permissions =
          Files.getPosixFilePermissions(file, LinkOption.NOFOLLOW_LINKS);
      if (!OWNER_ONLY.value().containsAll(permissions)) {
        throw new VaultUnavailableException(
            "Expected the vault key to be readable by its owner alone (rw-------), but found %s; change that and think of the key as known: %s"
                .formatted(PosixFilePermissions.toString(permissions), file));
      }
    }
  }

  private static Set<StandardOpenOption> options() {
    return Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
  }

  private static FileAttribute<?>[] attributes(Path file) {
    return isPosix(file) ? new FileAttribute<?>[] {OWNER_ONLY} : new FileAttribute<?>[0];
  }

  private static boolean isPosix(Path file) {
    return file.getFileSystem().supportedFileAttributeViews().contains("posix");
  }
}
