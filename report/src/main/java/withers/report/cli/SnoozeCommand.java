package withers.report.cli;

import java.time.LocalDate;
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
import withers.cases.CaseKey;
import withers.cases.Settlement;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.WorkspaceOption;
import withers.finding.RunResult;
import withers.id.ImportId;
import withers.log.EventLog;
import withers.settling.SettlementLog;
import withers.workspace.Workspace;

/** Puts a follow-up off until a day. */
@Command(
    name = "snooze",
    mixinStandardHelpOptions = true,
    description = {
      "Puts off a follow-up of the latest run until a day, with a reason. Until then it stays open",
      "and is on no list, unless it rests on something newer before; the next run heeds it.",
      "Again with another day replaces the day; \"withers settle CASE --withdraw\" takes it back."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  withers snooze SDAM-YRC7 --until 2031-06-01 --by coordinator --reason \"abroad till May\""
    })
public final class SnoozeCommand implements Callable<Integer> {

  /** Nothing is put off longer than so many days. */
  private static final int LONGEST = 366;

  private final Console console;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;

  @Mixin private CaseParameter wantedCase;

  @Option(
      names = "--until",
      paramLabel = "DATE",
      required = true,
      description = "The day on which it comes up again, YYYY-MM-DD; within a year.")
  private LocalDate until = LocalDate.MIN;

  @Mixin private WhoAndWhy said;

  SnoozeCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    SettleText text = new SettleText(workspace, this::refusal);
    requireSoon(workspace.today());
    String by = text.role(said.role());
    String why = text.reason(said.reason());
    RunResult run = new Reporter(workspace).run(Optional.empty());
    CaseKey key = text.one(new NamedCases(run, workspace).find(wantedCase.words()), run.id());
    requireOpen(key, run);
    SettlementLog.Word word =
        new SettlementLog.Word(
            key,
            new Settlement.ForLater(),
            workspace.today(),
            Optional.of(until.minusDays(1)),
            by,
            why);
    console.print(workspace.whileLocked("snooze", () -> write(word, workspace)));
    return ExitCode.DONE.number();
  }

  private void requireSoon(LocalDate today) {
    if (!until.isAfter(today) || until.isAfter(today.plusDays(LONGEST))) {
      throw refusal(
          "Expected --until with a day after today, %s, and within a year, but found %s"
              .formatted(today, until));
    }
  }

  private void requireOpen(CaseKey key, RunResult run) {
    if (!run.opened().contains(key) && !run.stillOpen().contains(key)) {
      throw refusal(
          "Expected a follow-up that is open, but %s is not: nothing has to be put off"
              .formatted(SettleText.named(key)));
    }
  }

  private String write(SettlementLog.Word word, Workspace workspace) {
    try (EventLog log = workspace.openLog()) {
      boolean isNew =
          new SettlementLog(log, workspace.clock(), () -> new ImportId(UUID.randomUUID()))
              .write(word);
      String named = SettleText.named(word.key());
      return isNew
          ? "Put off: %s, until %s.".formatted(named, until)
          : "Nothing new: %s is put off so already.".formatted(named);
    }
  }

  private ParameterException refusal(String message) {
    return new ParameterException(Objects.requireNonNull(spec).commandLine(), message);
  }
}
