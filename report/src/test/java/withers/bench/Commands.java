package withers.bench;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import withers.bench.BenchWorld.Month;
import withers.cli.Console;
import withers.cli.Environment;
import withers.cli.ExitCode;
import withers.cli.Operator;
import withers.cli.Progress;
import withers.finding.RunOutline;
import withers.finding.RunResult;
import withers.history.Scope;
import withers.reconcile.cli.Reconciler;
import withers.reconcile.cli.RunStore;
import withers.report.cli.Application;
import withers.report.demo.Home;
import withers.report.send.Pause;
import withers.workspace.Workspace;
import withers.workspace.WorkspacePaths;

/** What follows an import in a month, as the commands do it: runs are kept, lists are written. */
final class Commands {

  private static final int THREADS = 2;

  /** Withheld disappearances want attention; all is done nonetheless. */
  private static final Set<Integer> DONE =
      Set.of(ExitCode.DONE.number(), ExitCode.ATTENTION.number());

  private static final PrintStream NOWHERE = new PrintStream(OutputStream.nullOutputStream());

  private Commands() {}

  /** Judges a month, carries its follow-ups on and keeps the run. */
  static Work reconcile(Month month) {
    return (world, watch) -> {
      Workspace workspace = world.workspace();
      Reconciler reconciler = new Reconciler(workspace, THREADS, note -> {});
      RunResult run =
          workspace.whileLocked(
              "bench",
              () -> watch.time(() -> reconciler.run(Scope.asOf(month.asOf()), Progress.SILENT)));
      return new Work.Done(
          run.animals(),
          Map.of(
              "animals", run.animals(),
              "findings", (long) run.findings().size(),
              "digest", Digest.of(run.findings()),
              "cache-bytes", Folders.bytes(workspace.paths().cache())));
    };
  }

  /** Writes the lists of the latest run. */
  static Work lists(Month month) {
    return (world, watch) -> {
      Workspace workspace = world.workspace();
      // No more than this of the run: it would stay in the memory that is measured.
      RunOutline run = new RunStore(workspace.paths().runs()).latestOutline().orElseThrow();
      requireOf(month, run);
      Path folder = world.folder().resolve("workspace");
      watch.time(() -> command(world.clock(), "report", "--workspace", folder.toString()));
      return new Work.Done(
          findings(run), Map.of("bytes", Folders.bytes(workspace.paths().lists())));
    };
  }

  /**
   * Imports, judges and lists a month by one command, in a copy of the workspace that stays as it
   * is.
   */
  static Work run(Month month) {
    return (world, watch) -> {
      Path copy = world.folder().resolve("in-one");
      if (Files.exists(copy)) { // of a round that failed
        Folders.remove(copy);
      }
      Folders.copy(world.folder().resolve("workspace"), copy);
      WorkspacePaths paths = Workspace.open(copy, world.clock()).paths();
      for (Path export : world.exports(month)) {
        Files.copy(export, paths.inbox().resolve(export.getFileName()));
      }
      watch.time(() -> command(world.clock(), "run", "--workspace", copy.toString()));
      RunOutline run = new RunStore(paths.runs()).latestOutline().orElseThrow();
      requireOf(month, run);
      Folders.remove(copy);
      return new Work.Done(
          Yardsticks.rows(world.exports(month)), Map.of("findings", findings(run)));
    };
  }

  private static long findings(RunOutline run) {
    return run.findings().values().stream().mapToLong(Long::longValue).sum();
  }

  private static void requireOf(Month month, RunOutline run) {
    if (!run.asOf().equals(month.asOf())) {
      throw new IllegalStateException(
          "Expected the latest run to be of %s, but found %s".formatted(month.asOf(), run.asOf()));
    }
  }

  private static int command(Clock clock, String... arguments) {
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    PrintStream errors = new PrintStream(said, true, StandardCharsets.UTF_8);
    int exit =
        new Application(
                new Console(NOWHERE, errors, false),
                clock,
                Environment.ofThisProcess(),
                new Home(Optional.empty()),
                Operator.ofThisProcess(),
                Pause::real)
            .execute(arguments);
    if (!DONE.contains(exit)) {
      throw new IllegalStateException(
          "Expected %s to succeed, but it ended with %d: %s"
              .formatted(arguments[0], exit, said.toString(StandardCharsets.UTF_8)));
    }
    return exit;
  }
}
