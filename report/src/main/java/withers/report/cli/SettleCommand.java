package withers.report.cli;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import withers.cases.CaseKey;
import withers.cases.Settled;
import withers.cases.Settlement;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.WorkspaceOption;
import withers.contact.ContactVault;
import withers.finding.RunResult;
import withers.history.Periods;
import withers.history.Scope;
import withers.id.ImportId;
import withers.id.OrganisationId;
import withers.log.EventLog;
import withers.log.LogSnapshot;
import withers.reconcile.cli.PeopleOf;
import withers.run.SettlementReader;
import withers.settling.Answer;
import withers.settling.CannotBeSettledException;
import withers.settling.SettlementLog;
import withers.settling.SettlementMaker;
import withers.workspace.Workspace;
import withers.yaml.Choices;

/** Writes down what somebody found out about a follow-up. */
@Command(
    name = "settle",
    mixinStandardHelpOptions = true,
    description = {
      "Writes down what somebody found out about a follow-up of the latest run, so that the same is",
      "not asked again. The next run heeds it. Recording the same again changes nothing."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  withers settle SDAM-YRC7 --as right-as-it-is --by \"front desk\" --reason \"asked the owner\"",
      "  withers settle 999010900000101 contact-behind --as same-household --by \"front desk\"",
      "      --reason \"a couple, one flat\" --until 2031-12-31",
      "  withers settle SDAM-YRC7 --withdraw --by \"front desk\" --reason \"was a mix-up\""
    })
public final class SettleCommand implements Callable<Integer> {

  private final Console console;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;

  @Mixin private CaseParameter wantedCase;

  @ArgGroup(multiplicity = "1")
  private What what = new What();

  /** What is to be done: one of the two. */
  static final class What {

    @Option(
        names = "--as",
        paramLabel = "ANSWER",
        description = {
          "What was found out: right-as-it-is; of the two people on whom it turns, same-person,",
          "same-household or different-people; of one number on two animals, one-animal or",
          "mistaken-number (with --record)."
        })
    private @Nullable String answer;

    @Option(names = "--withdraw", description = "Take back what was settled about it.")
    private boolean withdraw;
  }

  @Mixin private WhoAndWhy said;

  @Option(
      names = "--on",
      paramLabel = "DATE",
      description =
          "When it was found out, YYYY-MM-DD. Default: today in the workspace's time zone.")
  private @Nullable LocalDate day;

  @Option(
      names = "--until",
      paramLabel = "DATE",
      description = "The last day on which it holds, YYYY-MM-DD. Default: no end.")
  private @Nullable LocalDate until;

  @Option(
      names = "--registry",
      paramLabel = "ID",
      description = "Whose registration is meant, when the follow-up turns on several.")
  private @Nullable String registry;

  @Option(
      names = "--record",
      paramLabel = "SOURCE:KEY",
      description = "The record whose number is mistaken.")
  private @Nullable String record;

  SettleCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    SettleText text = new SettleText(workspace, this::refusal);
    Request request = request(text);
    RunResult run = new Reporter(workspace).run(Optional.empty());
    try {
      console.print(workspace.whileLocked("settle", () -> settle(request, run, text)));
    } catch (CannotBeSettledException e) {
      throw refusal(Objects.requireNonNull(e.getMessage()));
    }
    return ExitCode.DONE.number();
  }

  /** What was typed, once it is understood. */
  private record Request(
      Optional<Answer> answer,
      String role,
      String reason,
      LocalDate day,
      Optional<LocalDate> until,
      Optional<OrganisationId> registry,
      Optional<String> record) {

    SettlementLog.Word word(CaseKey key, Settlement says) {
      return new SettlementLog.Word(key, says, day, until, role, reason);
    }
  }

  private Request request(SettleText text) {
    LocalDate found = text.day(Optional.ofNullable(day));
    return new Request(
        Optional.ofNullable(what.answer).map(text::answer),
        text.role(said.role()),
        text.reason(said.reason()),
        found,
        text.until(found, Optional.ofNullable(until)),
        Optional.ofNullable(registry).map(text::registry),
        Optional.ofNullable(record));
  }

  private String settle(Request request, RunResult run, SettleText text) {
    Workspace workspace = text.workspace();
    try (EventLog log = workspace.openLog();
        ContactVault vault = workspace.openVault()) {
      LogSnapshot snapshot = log.snapshot();
      CaseKey key = text.one(named(run, snapshot, workspace), run.id());
      SettlementMaker maker = maker(run, snapshot, vault, workspace);
      SettlementLog.Word word = word(request, key, maker);
      boolean isNew =
          new SettlementLog(log, workspace.clock(), () -> new ImportId(UUID.randomUUID()))
              .write(word);
      return told(key, request, isNew);
    }
  }

  private List<CaseKey> named(RunResult run, LogSnapshot log, Workspace workspace) {
    List<CaseKey> settled =
        SettlementReader.read(log, Scope.asOf(LocalDate.MAX)).all().stream()
            .map(Settled::key)
            .toList();
    return new NamedCases(run, settled, workspace).find(wantedCase.words());
  }

  private static SettlementMaker maker(
      RunResult run, LogSnapshot log, ContactVault vault, Workspace workspace) {
    return new SettlementMaker(
        run,
        log,
        workspace.directory(),
        PeopleOf.workspace(workspace, vault::findAll),
        Periods.of(workspace.settings(), workspace.directory()));
  }

  private SettlementLog.Word word(Request request, CaseKey key, SettlementMaker maker) {
    if (!what.withdraw) {
      Answer answer = request.answer.orElseThrow();
      return request.word(key, maker.make(key, answer, request.registry, request.record));
    }
    CaseKey settled =
        maker
            .settledUnder(key)
            .orElseThrow(
                () ->
                    refusal(
                        "Expected a follow-up that somebody settled, but nothing is settled about %s"
                            .formatted(SettleText.named(key))));
    return request.word(settled, new Settlement.TakenBack());
  }

  private static String told(CaseKey key, Request request, boolean isNew) {
    String named = SettleText.named(key);
    if (!isNew) {
      return "Nothing new: the same is settled about %s.".formatted(named);
    }
    return request
        .answer
        .map(answer -> "Settled: %s: %s.".formatted(named, Choices.name(answer)))
        .orElseGet(() -> "Taken back: what was settled about %s.".formatted(named));
  }

  private ParameterException refusal(String message) {
    return new ParameterException(Objects.requireNonNull(spec).commandLine(), message);
  }
}
