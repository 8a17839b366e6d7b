package withers.report.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import withers.sqlite.SqliteCopy;
import withers.sqlite.Upgrading.Outdated;
import withers.workspace.BeforeUpgrade;
import withers.workspace.OwnerOnly;
import withers.workspace.Workspace;

/**
 * Takes a backup, in a folder of the workspace that is new each time, before a store of an older
 * format is brought up. Without one nothing is changed.
 *
 * @param said told what is done, for whoever gave the command
 */
public record BackupFirst(Consumer<String> said) implements BeforeUpgrade {

  @Override
  public void done(Workspace workspace, Outdated store) {
    Path place = free(workspace, store);
    String shown = workspace.paths().shown(place);
    String change = "the %s from format %d to %d".formatted(store.what(), store.from(), store.to());
    said.accept(
        "withers: An older Withers wrote this workspace. Taking a backup in %s, then bringing %s."
            .formatted(shown, change));
    try {
      OwnerOnly.folder(workspace.paths().backups());
      new Backup(workspace).writeAsItIs(place);
    } catch (IOException | SqliteCopy.FailedException failed) {
      throw new BackupRefusedException(
          "Expected to take a backup in %s before bringing %s, but could not (%s): nothing was changed; see that there is room for it and that the folder may be written, then repeat"
              .formatted(shown, change, reason(failed)),
          failed);
    }
  }

  /** A plain I/O exception has the system's own words; others name a file. */
  private static String reason(Exception failed) {
    return failed.getMessage() == null ? failed.getClass().getSimpleName() : failed.getMessage();
  }

  private static Path free(Workspace workspace, Outdated store) {
    String name =
        "%s-before-%s-format-%d"
            .formatted(workspace.today(), store.what().replace(' ', '-'), store.to());
    return IntStream.iterate(1, i -> i + 1)
        .mapToObj(i -> workspace.paths().backups().resolve(i == 1 ? name : name + "-" + i))
        .filter(place -> !Files.exists(place))
        .findFirst()
        .orElseThrow();
  }
}
