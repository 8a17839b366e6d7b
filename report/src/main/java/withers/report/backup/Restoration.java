package withers.report.backup;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.stream.Stream;
import withers.contact.ContactVault;
import withers.contact.Erasures;
import withers.ingest.profile.Profiles;
import withers.ingest.quarantine.QuarantineRemoval;
import withers.workspace.BeforeUpgrade;
import withers.workspace.Workspace;

/**
 * Brings a backup back into a folder of its own, never over anything. What was forgotten since it
 * was taken is forgotten again before the folder can be seen.
 *
 * @param clock what time it is
 */
public record Restoration(Path backup, Clock clock) {
  private static final int MOST_TOLD = 5;

  /**
   * Brings it back.
   *
   * @param to a new or empty folder
   * @param since what was forgotten since, and before: twice does no harm
   * @throws BackupRefusedException when the backup is not as it was taken, or something is there
   */
  public void into(Path to, Erasures since) {
    try {
      requireWhole();
      Folders.make(
          to,
          fresh -> {
            Folders.copy(backup, fresh, Restoration::isOfWorkspace);
            forget(Workspace.open(fresh, clock, BeforeUpgrade.NOTHING), since);
          });
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void requireWhole() throws IOException {
    List<String> differences = Manifest.read(backup).differences(backup);
    if (!differences.isEmpty()) {
      throw new BackupRefusedException(
          "Expected the backup as it was taken, but found %d differences: nothing was changed; take another backup%s"
              .formatted(
                  differences.size(),
                  String.join(
                      "",
                      differences.stream().limit(MOST_TOLD).map(one -> "\n  " + one).toList())));
    }
  }

  private static boolean isOfWorkspace(Path place) {
    String name = place.toString();
    return !name.equals(Manifest.NAME) && !name.equals(ErasureList.NAME);
  }

  private static void forget(Workspace fresh, Erasures since) throws IOException {
    if (since.isEmpty() || !Files.exists(fresh.paths().contactVault())) {
      return;
    }
    try (ContactVault vault = fresh.openVault()) {
      vault.forget(since.references(), since.records());
    }
    QuarantineRemoval removal =
        new QuarantineRemoval(Profiles.read(fresh.paths().sources(), fresh.directory()));
    for (Path file : quarantined(fresh)) {
      removal.removeOf(file, since.records());
    }
  }

  private static List<Path> quarantined(Workspace fresh) throws IOException {
    if (!Files.isDirectory(fresh.paths().quarantine())) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(fresh.paths().quarantine())) {
      return files.filter(Files::isRegularFile).sorted().toList();
    }
  }
}
