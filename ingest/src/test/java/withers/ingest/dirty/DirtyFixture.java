package withers.ingest.dirty;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A folder of {@code fixtures/dirty}: what comes in, and beside it how that is read.
 *
 * @param folder holds one or more files whose names start with {@code input}, {@code expected.txt},
 *     and a {@code profile.yaml} where the common one does not fit
 */
record DirtyFixture(Path folder) {

  /** Every fixture, by name. */
  static List<DirtyFixture> all() {
    try (Stream<Path> folders = Files.list(root())) {
      return folders.filter(Files::isDirectory).sorted().map(DirtyFixture::new).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The folder {@code fixtures/dirty}, from wherever the tests run. */
  static Path root() {
    return Stream.iterate(Path.of("").toAbsolutePath(), Path::getParent)
        .takeWhile(at -> at != null)
        .map(at -> at.resolve("fixtures/dirty"))
        .filter(Files::isDirectory)
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("Expected a folder fixtures/dirty"));
  }

  String name() {
    return folder.getFileName().toString();
  }

  List<Path> inputs() {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> file.getFileName().toString().startsWith("input"))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  Path profile() {
    Path own = folder.resolve("profile.yaml");
    return Files.exists(own) ? own : root().resolve("profile.yaml");
  }

  /** What a person has checked; empty when nobody has yet. */
  Optional<String> expected() {
    Path file = folder.resolve("expected.txt");
    try {
      return Files.exists(file) ? Optional.of(Files.readString(file)) : Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  void write(String expected) {
    try {
      Files.writeString(folder.resolve("expected.txt"), expected);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
