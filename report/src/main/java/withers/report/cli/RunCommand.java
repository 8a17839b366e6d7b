package withers.report.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import withers.cli.AsOfOption;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.JsonOption;
import withers.cli.WorkspaceOption;
import withers.codec.finding.RunSummaryJson;
import withers.codec.imports.IngestJson;
import withers.ingest.cli.IngestText;
import withers.reconcile.cli.WorkersOption;
import withers.report.json.Json;
import withers.report.overview.Totals;
import withers.report.text.Texts;
import withers.workspace.Workspace;

/** Imports, judges and reports in one. */
@Command(
    name = "run",
    mixinStandardHelpOptions = true,
    description = {
      "Imports everything in the inbox that a profile recognises, judges every animal, and makes"
          + " lists, overview and mail.",
      "An export that is refused changes nothing and keeps no other out; the exit code tells."
    },
    footerHeading = "%nExample:%n",
    footer = "  withers run --workspace coast")
public final class RunCommand implements Callable<Integer> {
  private final Console console;

  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private AsOfOption asOf;
  @Mixin private JsonOption json;
  @Mixin private WorkersOption workers;

  RunCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    MonthlyRun month =
        new MonthlyRun(workspace, console, workers.crew(workspace, MonthlyRun.THREADS));
    MonthlyRun.Done done = month.run("run", asOf.in(workspace));
    ExitCode reported = json.isJson() ? tellJson(done, workspace) : tell(done, workspace);
    return (done.exitCode() == ExitCode.DONE ? reported : done.exitCode()).number();
  }

  private ExitCode tell(MonthlyRun.Done done, Workspace workspace) {
    new IngestText(workspace.paths(), workspace.settings().zone()).tell(done.ingested(), console);
    console.print("");
    Texts texts = Texts.in(workspace.settings().language());
    Totals.lines(done.published().overview(), texts).forEach(console::print);
    console.print("");
    return new PublishedText(console, workspace).tell(done.published());
  }

  private ExitCode tellJson(MonthlyRun.Done done, Workspace workspace) {
    Map<String, String> parts = new LinkedHashMap<>();
    parts.put("ingest", IngestJson.write(done.ingested()));
    parts.put("reconcile", RunSummaryJson.write(done.run()));
    parts.put("report", PublishedJson.of(done.published(), workspace.paths()));
    console.print(Json.joined(parts));
    return new PublishedText(console, workspace).warn(done.published());
  }
}
