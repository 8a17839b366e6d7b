package withers.report.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.JsonOption;
import withers.cli.WorkspaceOption;
import withers.report.publish.Published;
import withers.workspace.Workspace;

/** Makes lists, overview and mail of a run. */
@Command(
    name = "report",
    mixinStandardHelpOptions = true,
    description = {
      "Makes each organisation's list (HTML, XLSX, CSV), the coordinator's overview, and a mail for"
          + " each recipient in the outbox.",
      "Nothing is sent. Making a run's lists again replaces those that it made before."
    },
    footerHeading = "%nExample:%n",
    footer = "  withers report --workspace coast")
public final class ReportCommand implements Callable<Integer> {
  private final Console console;

  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private JsonOption json;

  @Option(
      names = "--run",
      paramLabel = "ID",
      description = "The run: a folder below runs/. Default: the latest one.")
  private @Nullable String run;

  ReportCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    Reporter reporter = new Reporter(workspace);
    Published published =
        workspace.whileLocked(
            "report", () -> reporter.publish(reporter.run(Optional.ofNullable(run))));
    return tell(published, workspace).number();
  }

  private ExitCode tell(Published published, Workspace workspace) {
    PublishedText text = new PublishedText(console, workspace);
    if (json.isJson()) {
      console.print(PublishedJson.of(published, workspace.paths()));
      return text.warn(published);
    }
    return text.tell(published);
  }
}
