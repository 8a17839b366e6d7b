package withers.report.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.Progress;
import withers.codec.Streams;
import withers.finding.RunResult;
import withers.history.Scope;
import withers.ingest.Ingested;
import withers.ingest.cli.Ingester;
import withers.reconcile.cli.Reconciler;
import withers.report.publish.Published;
import withers.work.Crew;
import withers.workspace.Workspace;

/**
 * The three steps in one: everything in the inbox, a run, its lists.
 *
 * @param crew others who judge partitions; empty when all is done here
 */
record MonthlyRun(Workspace workspace, Console console, Optional<Crew> crew) {
  static final int THREADS = Runtime.getRuntime().availableProcessors();

  /** What became of the three. */
  record Done(Ingested ingested, RunResult run, Published published) {

    /** How the first step ended: a refused export changes nothing, and keeps no other out. */
    ExitCode exitCode() {
      if (!ingested.refusals().isEmpty()) {
        return ExitCode.INPUT_REFUSED;
      }
      return ingested.needsAttention() ? ExitCode.ATTENTION : ExitCode.DONE;
    }
  }

  /**
   * Does it all, holding the workspace's lock from the first step to the last.
   *
   * @param activity the command that does it, told to those who are refused meanwhile
   * @param asOf the day to judge
   * @throws withers.yaml.ConfigException with all mistakes of all profiles; nothing was changed
   */
  Done run(String activity, LocalDate asOf) {
    Ingester ingester = new Ingester(workspace, console);
    return workspace.whileLocked(activity, () -> steps(ingester, asOf));
  }

  private Done steps(Ingester ingester, LocalDate asOf) {
    Ingested ingested = ingester.run(Ingester.Request.INBOX);
    RunResult run = reconcile(asOf);
    return new Done(ingested, run, new Reporter(workspace).publish(run));
  }

  private RunResult reconcile(LocalDate asOf) {
    List<String> notes = new ArrayList<>();
    try (Progress progress = console.progress("reconcile", Streams.CHIPS.partitions())) {
      return new Reconciler(workspace, THREADS, notes::add, crew).run(Scope.asOf(asOf), progress);
    } finally {
      notes.forEach(console::say);
    }
  }
}
