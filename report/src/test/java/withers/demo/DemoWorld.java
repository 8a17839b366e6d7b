package withers.demo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.stream.Stream;

/**
 * Makes the scenario: a workspace with its profiles, and each round's exports. The same seed and
 * number of animals give the same bytes; animals are made one at a time, so that memory does not
 * grow with their number.
 */
public final class DemoWorld {

  /** The seed of the committed scenario. */
  public static final long SEED = 20260901;

  /** How many animals the committed scenario has, beside those of the stories. */
  public static final int ANIMALS = 3000;

  private DemoWorld() {}

  /**
   * Writes a scenario in the layout of {@code fixtures/demo}, with the story animals at the end of
   * each file.
   *
   * @param animals how many, from 0 to 9,999,999, beside those of the stories
   * @param folder made if it is missing; files of the same names are replaced
   */
  public static void generate(long seed, int animals, Path folder) {
    try {
      copyWorkspace(folder);
      exports(seed, animals, folder);
    } catch (IOException unwritable) {
      throw new UncheckedIOException(unwritable);
    }
  }

  private static void exports(long seed, int animals, Path folder) throws IOException {
    int persons = Math.max(20, animals / 4 * 3);
    try (Exports exports = new Exports(folder)) {
      for (int number = 0; number < animals; number++) {
        exports.write(Lives.of(seed, number, persons));
      }
      exports.write(Supplies.ledger(seed, animals));
      exports.write(StoryTables.ledger());
    }
  }

  /** Writes the workspace's settings, organisations and profiles. */
  public static void copyWorkspace(Path folder) throws IOException {
    Path origin = Fixtures.folder().resolve("demo");
    for (Path file : handWritten(origin)) {
      Path copy = folder.resolve(origin.relativize(file));
      Files.createDirectories(copy.toAbsolutePath().getParent());
      if (!Files.exists(copy) || !Files.isSameFile(file, copy)) {
        Files.copy(file, copy, StandardCopyOption.REPLACE_EXISTING);
      }
    }
  }

  private static List<Path> handWritten(Path origin) throws IOException {
    try (Stream<Path> files = Files.walk(origin)) {
      return files.filter(file -> file.toString().endsWith(".yaml")).toList();
    }
  }

  /**
   * Writes the committed scenario anew, or another one.
   *
   * @param arguments none; or a folder, a seed and a number of animals
   */
  public static void main(String... arguments) {
    if (arguments.length == 3) {
      generate(Long.parseLong(arguments[1]), Integer.parseInt(arguments[2]), Path.of(arguments[0]));
    } else {
      generate(SEED, ANIMALS, Fixtures.folder().resolve("demo"));
    }
  }
}
