package withers.bench;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Folders with everything in them. */
final class Folders {

  private Folders() {}

  /** Copies a folder to one that is not there yet, and waits until the disk has it. */
  static void copy(Path from, Path to) throws IOException {
    List<Path> all = all(from);
    for (int i = all.size() - 1; i >= 0; i--) { // what holds others comes before them
      Path copy = to.resolve(from.relativize(all.get(i)));
      Files.copy(all.get(i), copy);
      if (Files.isRegularFile(copy)) {
        try (FileChannel written = FileChannel.open(copy, StandardOpenOption.WRITE)) {
          written.force(true);
        }
      }
    }
  }

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
