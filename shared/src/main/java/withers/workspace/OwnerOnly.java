package withers.workspace;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.Set;

/**
 * Makes folders and files that only their owner can read (700 and 600), from the moment they exist.
 * Where the file system knows no such permissions, its own defaults hold. Folders and files that
 * exist keep theirs.
 */
public final class OwnerOnly {
  private static final FileAttribute<?>[] FOLDER = permissions("rwx------");
  private static final FileAttribute<?>[] FILE = permissions("rw-------");

  private OwnerOnly() {}

  private static FileAttribute<?>[] permissions(String mode) {
    return FileSystems.getDefault().supportedFileAttributeViews().contains("posix")
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(mode))
        }
        : new FileAttribute<?>[0];
  }

  /** Makes a folder and those above it that are missing. */
  public static Path folder(Path folder) throws IOException {
    return Files.createDirectories(folder, FOLDER);
  }

  /**
   * Makes an empty file, for a library that fills it; an existing one is left as it is.
   *
   * @return whether it was made now
   */
  public static boolean file(Path file) throws IOException {
    try {
      Files.createFile(file, FILE);
      return true;
    } catch (FileAlreadyExistsException exists) {
      return false;
    }
  }

  /** Opens a file channel; a file that is made by it is its owner's only. */
  public static FileChannel open(Path file, OpenOption... options) throws IOException {
    return FileChannel.open(file, Set.of(options), FILE);
  }

  /** Opens a file for writing, empty, and makes its folder when it is missing. */
  public static FileChannel openAnew(Path folder, String name) throws IOException {
    return open(
        folder(folder).resolve(name),
        StandardOpenOption.CREATE,
        StandardOpenOption.TRUNCATE_EXISTING,
        StandardOpenOption.WRITE);
  }

  /**
   * Writes a new file, durable on return.
   *
   * @throws FileAlreadyExistsException when there is one
   */
  public static void writeNew(Path file, String text) throws IOException {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    write(file, out -> out.write(bytes), StandardOpenOption.CREATE_NEW);
  }

  /**
   * Writes a file whole or not at all, durable on return: readers see the old content or the new.
   */
  public static void replace(Path file, byte[] content) throws IOException {
    replace(file, out -> out.write(content));
  }

  /** What a file is filled with. */
  @FunctionalInterface
  public interface Content {
    void writeTo(OutputStream out) throws IOException;
  }

  /** The same with content that is written as it comes, however long it is. */
  public static void replace(Path file, Content content) throws IOException {
    Path fresh = file.resolveSibling(file.getFileName() + ".new");
    write(fresh, content, StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING);
    Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  private static void write(Path file, Content content, OpenOption... options) throws IOException {
    OpenOption[] all = Arrays.copyOf(options, options.length + 1);
    all[options.length] = StandardOpenOption.WRITE;
    try (FileChannel channel = open(file, all);
        OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel))) {
      content.writeTo(out);
      out.flush();
      channel.force(true);
    }
  }
}
