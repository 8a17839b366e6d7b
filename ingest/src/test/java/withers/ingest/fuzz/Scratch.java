package withers.ingest.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** A folder for the files of one input. Closing it deletes them. */
final class Scratch implements AutoCloseable {

  private final Path folder;

  Scratch() {
    try {
      this.folder = Files.createTempDirectory("withers-fuzz");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A new folder in it. */
  Path folder(String name) {
    try {
      return Files.createDirectories(folder.resolve(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A file in it. */
  Path file(String name, byte[] content) {
    try {
      Path file = folder.resolve(name);
      Files.createDirectories(file.getParent());
      return Files.write(file, content);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    try (Stream<Path> files = Files.walk(folder)) {
      List<Path> deepestFirst = files.sorted(Comparator.reverseOrder()).toList();
      for (Path file : deepestFirst) {
        Files.delete(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
