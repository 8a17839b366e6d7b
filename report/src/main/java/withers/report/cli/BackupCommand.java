package withers.report.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.WorkspaceOption;
import withers.report.backup.Backup;
import withers.report.backup.ErasureList;
import withers.workspace.OwnerOnly;
import withers.workspace.Workspace;

/** Takes a backup of a workspace. */
@Command(
    name = "backup",
    mixinStandardHelpOptions = true,
    description = {
      "Copies a workspace into a new or empty folder, while other commands use it: settings, exports,",
      "runs, the log and the vault as of one moment each, and a manifest of checksums. What can be made",
      "again is left out. Keep it as safe as the workspace: it holds the same details of people."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  withers backup --workspace coast /mnt/backups/coast-2031-06-01",
      "  withers backup --workspace coast --only-erasures /mnt/apart/coast-erasures.txt"
    })
public final class BackupCommand implements Callable<Integer> {
  private final Console console;

  @Mixin private WorkspaceOption workspaceOption;

  @Parameters(paramLabel = "DIR", description = "The new folder, or with --only-erasures the file.")
  private Path to = Path.of("");

  @Option(
      names = "--only-erasures",
      description = "Write only what was forgotten: the list that \"withers restore\" asks for.")
  private boolean onlyErasures;

  BackupCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws IOException {
    Workspace workspace = workspaceOption.open();
    if (onlyErasures) {
      OwnerOnly.writeNew(to, ErasureList.write(Backup.erasures(workspace)));
      console.print("Written: what was forgotten, to " + to);
    } else {
      console.print("Backed up: %d files, in %s".formatted(new Backup(workspace).write(to), to));
    }
    return ExitCode.DONE.number();
  }
}
