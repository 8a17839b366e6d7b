package withers.ingest.cli;

import java.time.LocalDate;
import java.util.List;
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
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.WorkspaceOption;
import withers.fact.LookUpAnswer;
import withers.id.ImportId;
import withers.ingest.lookup.KnownBefore;
import withers.ingest.lookup.LookUp;
import withers.ingest.lookup.LookUps;
import withers.log.EventLog;
import withers.organisation.Organisation;
import withers.workspace.Workspace;

/** Records what a registry answered. */
@Command(
    name = "record",
    mixinStandardHelpOptions = true,
    description = {
      "Records what a registry answered when somebody asked it about a number. The next run counts",
      "it as that registry's word. A wrong answer is put right by recording the right one for the",
      "same day. Recording the same again changes nothing."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  withers look-up record 999010900000101 --registry vendle --answer not-registered",
      "  withers look-up record 999010900000101 --registry \"Vendle Coast Chip Register\"",
      "      --answer registered --on 2031-02-27 --by \"front desk\""
    })
public final class LookUpRecordCommand implements Callable<Integer> {

  private final Console console;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;

  @Parameters(arity = "1..*", paramLabel = "NUMBER", description = "The number, in any spelling.")
  private List<String> number = List.of();

  @Option(
      names = "--registry",
      paramLabel = "ID-OR-NAME",
      required = true,
      description = "Who was asked: a registry of organisations.yaml.")
  private String registry = "";

  @Option(
      names = "--answer",
      paramLabel = "ANSWER",
      required = true,
      description = "What it answered: registered, not-registered or registered-elsewhere.")
  private String answer = "";

  @Option(
      names = "--on",
      paramLabel = "DATE",
      description = "When it was asked, YYYY-MM-DD. Default: today in the workspace's time zone.")
  private @Nullable LocalDate day;

  @Option(
      names = "--by",
      paramLabel = "ROLE",
      description = "In which role it was asked, such as \"front desk\". Never a person's name.")
  private @Nullable String role;

  LookUpRecordCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    LookUpText text = new LookUpText(workspace, this::refusal);
    Organisation asked = text.registry(registry);
    LookUp lookUp =
        new LookUp(
            text.number(String.join(" ", number)),
            asked.name(),
            text.answer(answer),
            text.day(Optional.ofNullable(day)),
            Optional.ofNullable(role).map(text::role));
    KnownBefore before = workspace.whileLocked("look-up record", () -> record(workspace, lookUp));
    console.print(told(lookUp, before));
    List<String> doubts = LookUpText.doubts(lookUp, before, workspace.directory(), asked);
    doubts.forEach(console::say);
    return (doubts.isEmpty() ? ExitCode.DONE : ExitCode.ATTENTION).number();
  }

  private KnownBefore record(Workspace workspace, LookUp lookUp) {
    try (EventLog log = workspace.openLog()) {
      LookUps lookUps =
          new LookUps(
              log,
              workspace.settings().coordinator(),
              workspace.clock(),
              () -> new ImportId(UUID.randomUUID()));
      return lookUps.record(lookUp);
    }
  }

  private static String told(LookUp lookUp, KnownBefore before) {
    String said = LookUpText.sentence(lookUp);
    if (before.says(lookUp)) {
      return "Nothing new: " + said;
    }
    Optional<LookUpAnswer> wrong = before.corrected(lookUp);
    return "Recorded: "
        + said
        + wrong.map(LookUpText::words).map(" It replaces the answer \"%s\"."::formatted).orElse("");
  }

  private ParameterException refusal(String message) {
    return new ParameterException(Objects.requireNonNull(spec).commandLine(), message);
  }
}
