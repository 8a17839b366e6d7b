package withers.report.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import withers.audit.TidiedUp;
import withers.auditing.AuditBook;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.Typed;
import withers.cli.WorkspaceOption;
import withers.finding.RunResult;
import withers.id.ImportId;
import withers.log.EventLog;
import withers.reconcile.cli.RunStore;
import withers.report.retention.Overdue;
import withers.report.retention.Overdue.Old;
import withers.workspace.FolderTree;
import withers.workspace.Retention.Kept;
import withers.workspace.Workspace;

/** Deletes what the workspace's policy does not keep any longer. */
@Command(
    name = "tidy",
    mixinStandardHelpOptions = true,
    description = {
      "Shows what is older than withers.yaml keeps it under \"retention\", and deletes it with --yes:",
      "quarantined rows, lists and mails, runs, scorecards, exports that are whole on the log, receipts.",
      "Never the log, the contacts, the settings, nor the latest run and its lists."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  withers tidy --workspace coast",
      "  withers tidy --yes --by coordinator --reason \"policy of 2026\""
    })
public final class TidyCommand implements Callable<Integer> {
  private final Console console;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private WhoAndWhyIfDone said;

  @Option(names = "--yes", description = "Delete it. Needs --by and --reason.")
  private boolean isAgreed;

  TidyCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    List<Old> old =
        isAgreed
            ? workspace.whileLocked("tidy", () -> deleted(workspace, typed()))
            : overdue(workspace);
    old.forEach(one -> console.print(told(one, workspace)));
    console.say(
        old.isEmpty()
            ? "Nothing is older than the policy keeps it."
            : isAgreed
                ? "Deleted: %s.".formatted(String.join(", ", counts(old)))
                : "Nothing was deleted: give --yes, with --by and --reason.");
    return ExitCode.DONE.number();
  }

  private Typed typed() {
    return new Typed(
        message -> new ParameterException(Objects.requireNonNull(spec).commandLine(), message));
  }

  private static List<Old> overdue(Workspace workspace) {
    return workspace.openFilledLog().map(log -> overdue(workspace, log)).orElse(List.of());
  }

  private static List<Old> overdue(Workspace workspace, EventLog log) {
    try (log) {
      return new Overdue(workspace, log.snapshot(), latest(workspace)).find();
    }
  }

  private static Optional<String> latest(Workspace workspace) {
    return new RunStore(workspace.paths().runs()).latest().map(RunResult::id);
  }

  /** What goes is written down first: better told twice than gone and not told. */
  private List<Old> deleted(Workspace workspace, Typed typed) {
    String by = typed.role(said.role());
    String why = typed.reason(said.reason());
    List<Old> old = overdue(workspace);
    if (!old.isEmpty()) {
      try (EventLog log = workspace.openLog()) {
        new AuditBook(log, workspace.clock(), () -> new ImportId(UUID.randomUUID()))
            .write(new TidiedUp(workspace.today(), by, why, counts(old)));
      }
      old.forEach(one -> delete(one.path()));
    }
    return old;
  }

  private static void delete(Path path) {
    try {
      if (Files.isDirectory(path)) {
        FolderTree.delete(path);
      } else {
        Files.deleteIfExists(path);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> counts(List<Old> old) {
    Map<Kept, Integer> counts = new EnumMap<>(Kept.class);
    old.forEach(one -> counts.merge(one.kept(), 1, Integer::sum));
    return counts.entrySet().stream()
        .map(one -> one.getKey().name().toLowerCase(java.util.Locale.ROOT) + " " + one.getValue())
        .toList();
  }

  private static String told(Old one, Workspace workspace) {
    return "%s  %s".formatted(one.since(), workspace.paths().shown(one.path()));
  }
}
