package withers.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Folders with everything in them. */
final class Folders {

  private Folders() {}

  static void remove(Path folder) throws IOException {
    for (Path file : all(folder)) {
      Files.delete(file);
    }
  }

  /** Bytes of its files; 0 where there is no such folder. */
  static long bytes(Path folder) throws IOException {
    return Files.exists(folder)
        ? all(folder).stream().filter(Files::isRegularFile).mapToLong(BenchWorld::size).sum()
        : 0;
  }

  /** What is deepest first. */
  private static List<Path> all(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.sorted(Comparator.reverseOrder()).toList();
    }
  }
}
