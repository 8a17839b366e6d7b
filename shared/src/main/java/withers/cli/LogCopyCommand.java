package withers.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import withers.log.EventLog;
import withers.log.copy.LogCopy;
import withers.log.copy.LogSum;
import withers.workspace.OtherLog;
import withers.workspace.Workspace;

/** Copies a log into the workspace's. */
@Command(
    name = "copy",
    mixinStandardHelpOptions = true,
    description = {
      "Copies an event log into the one that withers.yaml names, and compares both.",
      "Stopped in the midst, it goes on where it was when it is run again."
    },
    footerHeading = "%nExample, after the key log was added to withers.yaml:%n",
    footer = "  withers log copy --from embedded")
public final class LogCopyCommand implements Callable<Integer> {
  private final Console console;

  @Mixin private WorkspaceOption workspaceOption;

  @Option(
      names = "--from",
      required = true,
      paramLabel = "embedded|FILE",
      description = {
        "The log to copy: embedded for log/events.db in the workspace,",
        "or a YAML file with the key log as withers.yaml would have it."
      })
  private String from = "";

  LogCopyCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    return workspace.whileLocked("log copy", () -> copy(workspace));
  }

  private int copy(Workspace workspace) {
    try (EventLog source = OtherLog.open(workspace, from);
        EventLog target = workspace.openLog();
        Progress progress = console.progress("Copying", 0)) {
      LogSum sum = new LogCopy(source, target).run(progress::advance);
      console.print(
          "Both logs hold %,d imports with %,d events, checksum %s"
              .formatted(sum.imports(), sum.events(), sum.checksum()));
      return ExitCode.DONE.number();
    }
  }
}
