package withers.report.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** The pages of the demo, played from its real exports. */
public final class DemoPages {
  private static final Path HOME = Path.of("..").toAbsolutePath().normalize();

  private DemoPages() {}

  /**
   * Plays the demo.
   *
   * @param folder new, empty, or an earlier demo's
   * @return all pages of its last run, in order of their paths
   */
  public static List<Path> made(Path folder) {
    CommandRun demo = CommandRun.at(HOME, "demo", "--workspace", folder.toString());
    if (demo.code() != 0) {
      throw new IllegalStateException(demo.err());
    }
    try (Stream<Path> runs = Files.list(folder.resolve("lists"))) {
      return pages(runs.max(Comparator.naturalOrder()).orElseThrow());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<Path> pages(Path run) throws IOException {
    try (Stream<Path> all = Files.walk(run)) {
      return all.filter(path -> path.toString().endsWith(".html")).sorted().toList();
    }
  }
}
