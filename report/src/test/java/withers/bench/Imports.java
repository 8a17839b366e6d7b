package withers.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToLongFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import withers.bench.BenchWorld.Month;
import withers.cli.Console;
import withers.contact.ContactVault;
import withers.ingest.Ingested;
import withers.ingest.cli.Ingester;
import withers.log.Tally;
import withers.workspace.Workspace;
import withers.workspace.WorkspacePaths;

/** Imports, as the command does them: each file is checked, compared and written. */
final class Imports {

  private static final Pattern DAY = Pattern.compile("(.*)(\\d{4}-\\d{2}-\\d{2})(\\.csv)");
  private static final List<String> IN_PART = List.of("hathersand-movements", "lost-and-found");
  private static final int LATER_DAYS = 4;

  private Imports() {}

  /** Into a workspace that holds nothing yet. */
  static Work.Done first(BenchWorld world, Stopwatch watch) throws Exception {
    return run(world, watch, world.exports(Month.FIRST));
  }

  /**
   * The same rows in exports of a later day, each row recognised by its bytes. Without the sources
   * that send changes or a window alone: what they send again they state again.
   */
  static Work.Done unchanged(BenchWorld world, Stopwatch watch) throws Exception {
    Path folder = Files.createDirectories(world.folder().resolve("unchanged"));
    List<Path> copies = new ArrayList<>();
    for (Path file : world.exports(Month.FIRST)) {
      if (IN_PART.stream().noneMatch(file.getFileName().toString()::startsWith)) {
        Path copy = folder.resolve(later(file));
        copies.add(Files.copy(file, copy, StandardCopyOption.REPLACE_EXISTING));
      }
    }
    Work.Done done = run(world, watch, copies);
    Folders.remove(folder);
    return done;
  }

  /** The very same files. */
  static Work.Done again(BenchWorld world, Stopwatch watch) throws Exception {
    return run(world, watch, world.exports(Month.FIRST));
  }

  /** The next month's files, in which most rows are as they were. */
  static Work.Done next(BenchWorld world, Stopwatch watch) throws Exception {
    return run(world, watch, world.exports(Month.NEXT));
  }

  /** The file's name, its export's day some days later, before the next month's. */
  static String later(Path file) {
    Matcher name = DAY.matcher(file.getFileName().toString());
    if (!name.matches()) {
      throw new IllegalStateException("Expected a day in the file's name, but found " + file);
    }
    return name.group(1) + LocalDate.parse(name.group(2)).plusDays(LATER_DAYS) + name.group(3);
  }

  private static Work.Done run(BenchWorld world, Stopwatch watch, List<Path> files)
      throws Exception {
    Workspace workspace = world.workspace();
    Ingester.Request request =
        new Ingester.Request(files, Optional.empty(), Optional.empty(), Optional.empty(), Set.of());
    Ingested ingested =
        workspace.whileLocked(
            "bench",
            () -> watch.time(() -> new Ingester(workspace, Console.ofThisProcess()).run(request)));
    requireAll(ingested);
    return new Work.Done(rows(files, ingested), counts(world, files, ingested));
  }

  /** As read; files that were imported before are not read, but there all the same. */
  private static long rows(List<Path> files, Ingested ingested) throws IOException {
    long read = sum(ingested, Tally::read);
    return read == 0 ? Yardsticks.rows(files) : read;
  }

  private static void requireAll(Ingested ingested) {
    if (!ingested.refusals().isEmpty() || !ingested.unrecognised().isEmpty()) {
      throw new IllegalStateException(
          "Expected every file to be taken, but found %s %s"
              .formatted(ingested.refusals(), ingested.unrecognised()));
    }
  }

  private static Map<String, Long> counts(BenchWorld world, List<Path> files, Ingested ingested)
      throws IOException {
    WorkspacePaths paths = world.workspace().paths();
    try (ContactVault vault = world.workspace().openVault()) {
      return Map.of(
          "rows", Yardsticks.rows(files),
          "read", sum(ingested, Tally::read),
          "applied", sum(ingested, Tally::applied),
          "unchanged", sum(ingested, Tally::unchanged),
          "rejected", sum(ingested, Tally::rejected),
          "events", sum(ingested, Tally::events),
          "contacts", vault.size(),
          "export-bytes", files.stream().mapToLong(BenchWorld::size).sum(),
          "log-bytes", BenchWorld.bytes(paths.eventLog()),
          "vault-bytes", BenchWorld.bytes(paths.contactVault()));
    }
  }

  private static long sum(Ingested ingested, ToLongFunction<Tally> count) {
    return ingested.reports().stream().map(report -> report.tally()).mapToLong(count).sum();
  }
}
