package withers.report.backup;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Predicate;
import java.util.stream.Stream;
import withers.workspace.FolderTree;
import withers.workspace.OwnerOnly;

/** Folders that are filled out of sight and stand whole, or not at all. */
final class Folders {
  private Folders() {}

  /** What fills a folder. */
  @FunctionalInterface
  interface Filling {
    void fill(Path folder) throws IOException;
  }

  /**
   * Makes a folder.
   *
   * @throws BackupRefusedException when something is there already
   */
  static void make(Path place, Filling filling) throws IOException {
    Path whole = place.toAbsolutePath().normalize();
    requireFree(whole);
    Path fresh = whole.resolveSibling("." + whole.getFileName() + ".new");
    FolderTree.delete(fresh);
    try {
      OwnerOnly.folder(fresh);
      filling.fill(fresh);
      Files.deleteIfExists(whole);
      Files.move(fresh, whole, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      FolderTree.delete(fresh);
    }
  }

  private static void requireFree(Path place) throws IOException {
    if (Files.exists(place) && !isEmptyFolder(place)) {
      throw new BackupRefusedException(
          "Expected a new or empty folder, but found something in it (%s): nothing was changed; choose another"
              .formatted(place));
    }
  }

  private static boolean isEmptyFolder(Path place) throws IOException {
    if (!Files.isDirectory(place)) {
      return false;
    }
    try (Stream<Path> content = Files.list(place)) {
      return content.findAny().isEmpty();
    }
  }

  /**
   * Copies files, for their owner only; one that goes meanwhile is left out.
   *
   * @param wanted told of places below the folder
   */
  static void copy(Path from, Path to, Predicate<Path> wanted) throws IOException {
    for (Path file : files(from)) {
      Path place = from.relativize(file);
      if (wanted.test(place)) {
        copyFile(file, to.resolve(place.toString()));
      }
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    Gathering gathering = new Gathering();
    Files.walkFileTree(folder, gathering);
    return gathering.files.stream().sorted().toList();
  }

  /** Others work there meanwhile: what is listed may be gone when it is looked at. */
  private static final class Gathering extends SimpleFileVisitor<Path> {
    private final List<Path> files = new ArrayList<>();

    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
      if (Files.isRegularFile(file)) {
        files.add(file);
      }
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFileFailed(Path file, IOException failed) throws IOException {
      if (failed instanceof NoSuchFileException) {
        return FileVisitResult.CONTINUE;
      }
      throw failed;
    }
  }

  private static void copyFile(Path from, Path to) throws IOException {
    OwnerOnly.folder(Objects.requireNonNull(to.getParent()));
    OwnerOnly.file(to);
    try {
      Files.copy(from, to, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.COPY_ATTRIBUTES);
    } catch (NoSuchFileException gone) {
      Files.deleteIfExists(to);
    }
  }
}
