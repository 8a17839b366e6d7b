package withers.ingest.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
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
import withers.cli.JsonOption;
import withers.cli.WorkspaceOption;
import withers.codec.imports.IngestJson;
import withers.id.SourceId;
import withers.ingest.Allowance;
import withers.ingest.Ingested;
import withers.source.Extent;
import withers.workspace.Workspace;
import withers.yaml.Values;

/** Imports exports. */
@Command(
    name = "ingest",
    mixinStandardHelpOptions = true,
    description = {
      "Imports exports: each is on the log whole or not at all.",
      "Without files, everything new in the workspace's inbox: in a folder named after a source, or"
          + " recognised by a profile.",
      "Files of one source with one export date are one export. Importing again changes nothing.",
      "A quarantine file whose cells were put right is ingested like an export, and so is a list's",
      "sheet that came back with answers: it is known by its header."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  withers ingest --workspace coast",
      "  withers ingest patients.csv --source harbour-clinic --export-date 2031-02-28",
      "  withers ingest quarantine/harbour-clinic-2031-01-31-4671074e.csv",
      "  withers ingest list.xlsx"
    })
public final class IngestCommand implements Callable<Integer> {
  private final Console console;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private SourceOptions of;
  @Mixin private JsonOption json;

  @Parameters(
      paramLabel = "FILE",
      arity = "0..*",
      description =
          "Exports, quarantine files or lists' sheets. Default: all that is new in the inbox.")
  private List<Path> files = List.of();

  @Option(
      names = "--window",
      paramLabel = "FROM..TO",
      description = "First and last day of what the files hold. Default: as the profile says.")
  private @Nullable String window;

  @Option(
      names = "--backfill",
      description = "Take exports older than the source's newest full one.")
  private boolean backfill;

  @Option(
      names = "--new-records",
      description = "Take records under new keys as new ones, though they look like old ones.")
  private boolean newRecords;

  @Option(
      names = "--settled",
      description = "Nobody is writing to the inbox: don't wait for new files to settle.")
  private boolean settled;

  @Option(
      names = "--confirm-disappearances",
      paramLabel = "DATE",
      description =
          "Believe what the export of this date misses, and import nothing. Needs --source.")
  private @Nullable LocalDate confirmed;

  IngestCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Ingester.Request request = request();
    Workspace workspace = workspaceOption.open();
    Ingester ingester = new Ingester(workspace, console);
    return workspace.whileLocked(
        "ingest",
        () ->
            confirmed == null
                ? tell(ingester.run(request), workspace)
                : confirm(ingester, request, confirmed));
  }

  private int tell(Ingested ingested, Workspace workspace) {
    if (json.isJson()) {
      console.print(IngestJson.write(ingested));
    } else {
      new IngestText(workspace.paths(), workspace.settings().zone()).tell(ingested, console);
    }
    return exitCode(ingested).number();
  }

  private ExitCode exitCode(Ingested ingested) {
    boolean namedUnrecognised = !files.isEmpty() && !ingested.unrecognised().isEmpty();
    if (!ingested.refusals().isEmpty() || namedUnrecognised) {
      return ExitCode.INPUT_REFUSED;
    }
    return ingested.needsAttention() ? ExitCode.ATTENTION : ExitCode.DONE;
  }

  private int confirm(Ingester ingester, Ingester.Request request, LocalDate date) {
    SourceId id =
        request
            .source()
            .orElseThrow(
                () -> wrong("Expected --source with --confirm-disappearances, but found none"));
    ingester.confirm(id, date);
    console.print(
        "%s %s: records that this export misses are no longer listed".formatted(id, date));
    return ExitCode.DONE.number();
  }

  private Ingester.Request request() {
    if (files.isEmpty()
        && of.source().isEmpty()
        && (of.exportDate().isPresent() || window != null)) {
      throw wrong("Expected files or --source with --export-date or --window, but found neither");
    }
    return new Ingester.Request(
        files,
        of.source(),
        of.exportDate(),
        Optional.ofNullable(window).map(this::window),
        allowed(),
        settled);
  }

  private Set<Allowance> allowed() {
    Set<Allowance> allowed = EnumSet.noneOf(Allowance.class);
    if (backfill) {
      allowed.add(Allowance.BACKFILL);
    }
    if (newRecords) {
      allowed.add(Allowance.NEW_RECORDS);
    }
    return allowed;
  }

  private Extent.Window window(String text) {
    try {
      int dots = text.indexOf("..");
      if (dots > 0) {
        return new Extent.Window(
            Values.date(text.substring(0, dots)), Values.date(text.substring(dots + 2)));
      }
    } catch (IllegalArgumentException refused) {
      throw wrong(String.valueOf(refused.getMessage()));
    }
    throw wrong("Expected --window FROM..TO, but found no two dots");
  }

  private ParameterException wrong(String message) {
    return new ParameterException(Objects.requireNonNull(spec).commandLine(), message);
  }
}
