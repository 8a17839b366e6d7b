package withers.report.schedule.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.JsonOption;
import withers.cli.WorkspaceOption;
import withers.report.json.Json;
import withers.report.watch.Standing;
import withers.workspace.Workspace;

/** Tells how a workspace stands. */
@Command(
    name = "status",
    mixinStandardHelpOptions = true,
    description = {
      "Tells what ran, what is due, and what waits for somebody: withheld disappearances, files that",
      "could not be taken, rows to put right, mails of which nobody is sure, open questions.",
      "It ends with 1 when something waits. It changes nothing."
    },
    footerHeading = "%nExample:%n",
    footer = "  withers status --workspace coast")
public final class StatusCommand implements Callable<Integer> {
  private final Console console;

  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private JsonOption json;

  StatusCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    Standing standing = new Standings(workspace).read();
    StatusText text = new StatusText(standing, workspace.settings().zone());
    if (json.isJson()) {
      console.print(Json.of(standing));
    } else {
      text.lines().forEach(console::print);
    }
    return (text.waiting().isEmpty() ? ExitCode.DONE : ExitCode.ATTENTION).number();
  }
}
