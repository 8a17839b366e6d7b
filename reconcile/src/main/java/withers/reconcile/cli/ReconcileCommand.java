package withers.reconcile.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import withers.cli.AsOfOption;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.JsonOption;
import withers.cli.Progress;
import withers.cli.WorkspaceOption;
import withers.codec.Streams;
import withers.codec.finding.RunSummaryJson;
import withers.finding.RunResult;
import withers.history.Scope;
import withers.work.Crew;
import withers.workspace.Workspace;

/** Judges every animal that the log tells of. */
@Command(
    name = "reconcile",
    mixinStandardHelpOptions = true,
    description = {
      "Judges every animal that the log tells of, and carries the follow-ups on.",
      "A run that looks back, to a day before the newest run or to what was known earlier,"
          + " changes no follow-up."
    },
    footerHeading = "%nExample:%n",
    footer = "  withers reconcile --workspace coast --as-of 2031-03-01")
public final class ReconcileCommand implements Callable<Integer> {
  private final Console console;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private AsOfOption asOf;
  @Mixin private JsonOption json;

  @Option(
      names = "--known-by",
      paramLabel = "DATE",
      description =
          "Leave exports dated after this day out, YYYY-MM-DD. Default: none is left out.")
  private @Nullable LocalDate knownBy;

  @Option(
      names = "--threads",
      paramLabel = "N",
      description = "How many partitions to judge at a time. Default: one for each processor.")
  private int threads = Runtime.getRuntime().availableProcessors();

  @Mixin private WorkersOption workers;

  ReconcileCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    requireThreads();
    Workspace workspace = workspaceOption.open();
    Scope scope = new Scope(asOf.in(workspace), Optional.ofNullable(knownBy));
    Optional<Crew> crew = workers.crew(workspace, threads);
    RunResult run = workspace.whileLocked("reconcile", () -> run(workspace, scope, crew));
    if (json.isJson()) {
      console.print(RunSummaryJson.write(run));
    } else {
      RunText.of(run, workspace).forEach(console::print);
    }
    return ExitCode.DONE.number();
  }

  private void requireThreads() {
    if (threads < 1) {
      throw new ParameterException(
          Objects.requireNonNull(spec).commandLine(),
          "Expected --threads from 1, but found " + threads);
    }
  }

  private RunResult run(Workspace workspace, Scope scope, Optional<Crew> crew) {
    List<String> notes = new ArrayList<>();
    try (Progress progress = console.progress("reconcile", Streams.CHIPS.partitions())) {
      return new Reconciler(workspace, threads, notes::add, crew).run(scope, progress);
    } finally {
      notes.forEach(console::say);
    }
  }
}
