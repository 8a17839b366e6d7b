package withers.cli;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Objects;

/** Says in words what is wrong with a file or a disk. */
final class StorageWords {
  private StorageWords() {}

  static String of(IOException failed) {
    if (failed instanceof NoSuchFileException missing) {
      return "Expected a file, but found none (%s)".formatted(missing.getFile());
    }
    if (failed instanceof AccessDeniedException denied) {
      return "Expected access, but it was denied (%s): check owner and permissions"
          .formatted(denied.getFile());
    }
    if (failed instanceof FileSystemException other) {
      return "Expected a file that can be used, but found: %s (%s)"
          .formatted(reason(other), other.getFile());
    }
    return "Expected to read and write the workspace, but the system said: " + words(failed);
  }

  private static String reason(FileSystemException failed) {
    return Objects.requireNonNullElse(failed.getReason(), failed.getClass().getSimpleName());
  }

  /**
   * Plain I/O exceptions carry the system's own words; those of libraries may carry what was read.
   */
  private static String words(IOException failed) {
    boolean plain = failed.getClass() == IOException.class && failed.getMessage() != null;
    return plain ? String.valueOf(failed.getMessage()) : failed.getClass().getSimpleName();
  }
}
