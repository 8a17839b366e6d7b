package withers.report.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.contact.Erasures;
import withers.report.backup.Backup;
import withers.report.backup.ErasureList;
import withers.report.backup.Restoration;
import withers.workspace.BeforeUpgrade;
import withers.workspace.Workspace;

/** Brings a backup back. */
@Command(
    name = "restore",
    mixinStandardHelpOptions = true,
    description = {
      "Checks a backup and brings it back into a new or empty folder, never over anything. Whoever was",
      "forgotten since the backup was taken is forgotten again: say where that is written."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  withers restore /mnt/backups/coast-2031-06-01 coast-again --erasures coast",
      "  withers restore /mnt/backups/coast-2031-06-01 coast --erasures /mnt/apart/coast-erasures.txt"
    })
public final class RestoreCommand implements Callable<Integer> {
  private final Console console;
  private final Clock clock;
  private final BeforeUpgrade beforeUpgrade;

  @Parameters(index = "0", paramLabel = "BACKUP", description = "The backup's folder.")
  private Path backup = Path.of("");

  @Parameters(index = "1", paramLabel = "DIR", description = "The new workspace's folder.")
  private Path to = Path.of("");

  @ArgGroup(multiplicity = "1")
  private Since since = new Since();

  /** What was forgotten since the backup; one of the two must be said. */
  static final class Since {
    @Option(
        names = "--erasures",
        paramLabel = "FILE|DIR",
        description =
            "What was forgotten: the workspace that is replaced, or a list of \"backup --only-erasures\".")
    private @Nullable Path erasures;

    @Option(
        names = "--no-erasures",
        description = "Nobody was forgotten since the backup was taken.")
    private boolean none;
  }

  RestoreCommand(Console console, Clock clock, BeforeUpgrade beforeUpgrade) {
    this.console = console;
    this.clock = clock;
    this.beforeUpgrade = beforeUpgrade;
  }

  @Override
  public Integer call() throws IOException {
    Erasures erasures = erasures();
    new Restoration(backup, clock).into(to, erasures);
    console.print("Restored: " + to);
    if (!erasures.isEmpty()) {
      console.print(
          "Forgotten again: %d contacts and %d records. Exports in its inbox may still hold them: \"withers forget\" finds them."
              .formatted(erasures.references().size(), erasures.records().size()));
    }
    console.say("Next: \"withers verify\" examines it, \"withers report\" makes its lists again.");
    return ExitCode.DONE.number();
  }

  private Erasures erasures() throws IOException {
    if (since.none) {
      return new Erasures(Set.of(), Set.of());
    }
    Path from = Objects.requireNonNull(since.erasures); // one of the two is given
    return Files.isDirectory(from)
        ? Backup.erasures(Workspace.open(from, clock, beforeUpgrade))
        : ErasureList.read(from);
  }
}
