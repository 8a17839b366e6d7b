package withers.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.Stream;
import withers.demo.DemoWorld;
import withers.demo.NetworkWorld;
import withers.workspace.Workspace;

/**
 * The generated files: a network in the layout of {@code fixtures/demo}, with as many animals as
 * give the stated number of rows, and its workspace.
 *
 * @param folder as {@link DemoWorld#generate} lays it out
 */
record BenchWorld(Path folder) {

  /** The scenario's two months: the folder of the exports, and the day that is judged. */
  enum Month {
    FIRST("2026-09", LocalDate.of(2026, 9, 1)),
    NEXT("2026-10", LocalDate.of(2026, 10, 1));

    private final String folder;
    private final LocalDate asOf;

    Month(String folder, LocalDate asOf) {
      this.folder = folder;
      this.asOf = asOf;
    }

    LocalDate asOf() {
      return asOf;
    }
  }

  private static final String WORKSPACE = "workspace";

  /** Rows that one animal brings to the first month, on average; counted on 50,000 animals. */
  private static final double ROWS_OF_DEMO = 2.22;

  private static final double ROWS_OF_NETWORK = 2.43;

  /** Makes the files for about so many rows in the first month. */
  static BenchWorld generate(Path folder, long seed, long rows, MixOptions mix) {
    if (mix.isDemo()) {
      DemoWorld.generate(seed, (int) Math.round(rows / ROWS_OF_DEMO), folder);
    } else {
      int animals = (int) Math.round(rows / ROWS_OF_NETWORK);
      NetworkWorld.generate(seed, animals, mix.shares(), folder);
    }
    return new BenchWorld(folder);
  }

  /** The exports of a month, in the order of their names. */
  List<Path> exports(Month month) {
    return list(folder(month)).sorted().toList();
  }

  Path folder(Month month) {
    return folder.resolve(month.folder);
  }

  Workspace workspace() {
    return Workspace.open(folder.resolve(WORKSPACE), clock());
  }

  /** Noon of the day on which the next month is judged, for ever. */
  Clock clock() {
    return Clock.fixed(Month.NEXT.asOf.atTime(12, 0).toInstant(ZoneOffset.UTC), ZoneOffset.UTC);
  }

  /** Forgets everything that was imported and found. */
  void renewWorkspace() throws IOException {
    Folders.remove(folder.resolve(WORKSPACE));
    DemoWorld.copyWorkspace(folder);
  }

  /** Bytes on disk of the event log, or of the vault, with what SQLite keeps beside them. */
  static long bytes(Path database) {
    String name = database.getFileName().toString();
    return list(database.resolveSibling("."))
        .filter(file -> file.getFileName().toString().startsWith(name))
        .mapToLong(BenchWorld::size)
        .sum();
  }

  private static Stream<Path> list(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files.toList().stream();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  static long size(Path file) {
    try {
      return Files.size(file);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
