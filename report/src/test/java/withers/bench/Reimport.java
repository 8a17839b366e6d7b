package withers.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import withers.cli.Console;
import withers.ingest.ImportReport;
import withers.ingest.Ingested;
import withers.ingest.cli.Ingester;
import withers.ingest.known.BareLoop;
import withers.log.EventLog;
import withers.log.sqlite.SqliteEventLog;
import withers.workspace.NewWorkspace;
import withers.workspace.TestNumbers;
import withers.workspace.Workspace;

/**
 * The program: one registry's export imported month after month, unchanged and with few rows
 * changed, beside the bare loop that splits the same file and hashes each record.
 */
@Command(
    name = "reimport",
    mixinStandardHelpOptions = true,
    description = "Imports an export again, unchanged and changed, beside the bare loop.")
final class Reimport implements Callable<Integer> {

  private static final LocalDate FIRST = LocalDate.of(2026, 1, 31);
  private static final String SOURCE = "coast-registry";
  private static final int ONE_IN = 200; // 0.5 %

  private final Console console;

  @Option(names = "--rows", defaultValue = "5000000", description = "Rows (${DEFAULT-VALUE}).")
  private long rows;

  @Option(
      names = "--warm-up",
      defaultValue = "5",
      description = "Rounds that are printed and left out of the medians (${DEFAULT-VALUE}).")
  private int warmUp;

  @Option(
      names = "--rounds",
      defaultValue = "9",
      description = "Measured rounds (${DEFAULT-VALUE}).")
  private int rounds;

  @Option(names = "--seed", defaultValue = "20260131", description = "Another seed: other files.")
  private long seed;

  @Option(names = "--folder", required = true, description = "For the files; it stays.")
  private Path folder = Path.of(".");

  @Option(names = "--go-on", description = "With what an earlier run left in the folder.")
  private boolean goOn;

  private int months;

  Reimport(Console console) {
    this.console = console;
  }

  /**
   * Runs and ends the JVM with its exit code.
   *
   * @param arguments options; {@code --help} tells them
   */
  public static void main(String... arguments) {
    System.exit(new CommandLine(new Reimport(Console.ofThisProcess())).execute(arguments));
  }

  @Override
  public Integer call() throws Exception {
    Path file = folder.resolve("accounts.csv");
    Path other = folder.resolve("accounts-other.csv");
    Workspace workspace = goOn ? earlier() : prepare(file);
    if (Files.exists(other) && isNewer(other, file)) {
      Path newest = other;
      other = file;
      file = newest;
    }
    console.print(setting(file));
    line(goOn ? "going on" : "first import", take(workspace, file, false), "");
    for (int i = -warmUp; i < rounds; i++) {
      round(workspace, file, other, i < 0 ? "(warm-up)" : "");
      Path last = other;
      other = file;
      file = last;
    }
    summary();
    return 0;
  }

  private static boolean isNewer(Path one, Path other) throws IOException {
    return Files.getLastModifiedTime(one).compareTo(Files.getLastModifiedTime(other)) > 0;
  }

  private Workspace earlier() {
    Workspace workspace = Workspace.open(folder.resolve("workspace"), noon());
    try (EventLog log = SqliteEventLog.open(workspace.paths().eventLog())) {
      months = log.snapshot().markers().size();
    }
    return workspace;
  }

  private static Clock noon() {
    return Clock.fixed(FIRST.atTime(12, 0).toInstant(ZoneOffset.UTC), ZoneOffset.UTC);
  }

  private Workspace prepare(Path file) throws IOException {
    Path root = folder.resolve("workspace");
    Workspace.create(
        root, new NewWorkspace("Coast", ZoneOffset.UTC, "US", "en", TestNumbers.ACCEPTED));
    Files.writeString(
        root.resolve("organisations.yaml"),
        """
        organisations:
          - {id: coordinator, name: Coast, kind: coordinator}
          - {id: coast-registry, name: Coast Registry, kind: registry}
        """,
        StandardCharsets.UTF_8);
    Files.writeString(root.resolve("sources/" + SOURCE + ".yaml"), RegistryFile.PROFILE);
    RegistryFile.write(file, rows, seed);
    return Workspace.open(root, noon());
  }

  private String setting(Path file) throws IOException {
    Machine machine = Machine.here();
    return text(
        "%,d rows, %.0f MB; %d processors, load %.1f before; Java %s",
        rows, Files.size(file) / 1e6, machine.processors(), machine.loadAverage(), machine.java());
  }

  private final List<Double> bare = new ArrayList<>();
  private final List<Double> unchanged = new ArrayList<>();
  private final List<Double> changed = new ArrayList<>();

  /** The bare loop, the last file again, and one in which other rows than ever are changed. */
  private void round(Workspace workspace, Path last, Path next, String remark) throws Exception {
    Stopwatch watch = new Stopwatch();
    BareLoop.Hashed hashed = watch.time(() -> BareLoop.over(last, ','));
    same("records of the bare loop", rows + 1, hashed.records());
    Took loop = new Took(watch, rows, rows, 0);
    Took again = take(workspace, last, true);
    same("changed rows", 0, again.rows - again.recognised);
    long other = RegistryFile.change(last, next, ONE_IN, months / 2 % ONE_IN, seed);
    Took few = take(workspace, next, true);
    same("applied rows", other, few.applied);
    same("rows that were not recognised", other, few.rows - few.recognised);
    line("split and hash", loop, remark);
    line("import unchanged", again, remark);
    line("import, 0.5 % changed", few, remark);
    if (remark.isEmpty()) {
      bare.add(loop.watch.seconds());
      unchanged.add(again.watch.seconds());
      changed.add(few.watch.seconds());
    }
  }

  private record Took(Stopwatch watch, long rows, long recognised, long applied) {}

  private Took take(Workspace workspace, Path file, boolean again) throws Exception {
    LocalDate date = FIRST.plusMonths(months++);
    Path export = folder.resolve("accounts-%s.csv".formatted(date));
    Files.createLink(export, file);
    Ingester.Request request =
        new Ingester.Request(
            List.of(export), Optional.empty(), Optional.empty(), Optional.empty(), Set.of());
    Stopwatch watch = new Stopwatch();
    Ingested ingested =
        workspace.whileLocked(
            "bench", () -> watch.time(() -> new Ingester(workspace, console).run(request)));
    Files.delete(export);
    ImportReport report = only(ingested);
    same("rows", rows, report.tally().read());
    if (again && report.reuse().recognised() == 0) {
      throw new IllegalStateException("Expected recognised rows, but found none");
    }
    return new Took(watch, rows, report.reuse().recognised(), report.tally().applied());
  }

  private static ImportReport only(Ingested ingested) {
    if (ingested.reports().size() != 1) {
      throw new IllegalStateException("Expected one import, but found " + ingested);
    }
    return ingested.reports().get(0);
  }

  private static void same(String what, long expected, long found) {
    if (expected != found) {
      throw new IllegalStateException(
          "Expected %d %s, but found %d".formatted(expected, what, found));
    }
  }

  private void line(String what, Took took, String remark) {
    console.print(
        text(
            "%-24s %8.2f s %8.2f CPU s %,14.0f rows/s  %,d recognised, %,d applied %s",
            what,
            took.watch.seconds(),
            took.watch.processorSeconds(),
            took.rows / took.watch.seconds(),
            took.recognised,
            took.applied,
            remark));
  }

  private void summary() {
    double loop = median(bare);
    double same = median(unchanged);
    double other = median(changed);
    console.print(
        text(
            "medians of %d rounds: unchanged at %.2f of the bare loop's rate; 0.5 %% changed takes %.2f times as long as unchanged",
            rounds, loop / same, other / same));
  }

  private static double median(List<Double> values) {
    return values.stream().sorted().skip(values.size() / 2).findFirst().orElseThrow();
  }

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
