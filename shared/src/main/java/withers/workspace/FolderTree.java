package withers.workspace;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import org.jspecify.annotations.Nullable;

/** Folders with all that is in them. */
public final class FolderTree {
  private FolderTree() {}

  /** Deletes a folder and what is in it; links are deleted, and not followed. */
  public static void delete(Path folder) throws IOException {
    if (Files.exists(folder)) {
      Files.walkFileTree(folder, new Deleting());
    }
  }

  private static final class Deleting extends SimpleFileVisitor<Path> {
    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
      Files.delete(file);
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult postVisitDirectory(Path folder, @Nullable IOException failed)
        throws IOException {
      if (failed != null) {
        throw failed;
      }
      Files.delete(folder);
      return FileVisitResult.CONTINUE;
    }
  }
}
