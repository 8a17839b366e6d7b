package withers.workspace;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import withers.contact.ContactVault;
import withers.contact.FormStore;
import withers.contact.VaultKey;
import withers.contact.VaultKeyFile;
import withers.contact.sqlite.SqliteContactVault;
import withers.contact.sqlite.SqliteFormStore;
import withers.log.EventLog;
import withers.log.sqlite.SqliteEventLog;

/** Opens what a workspace keeps for good. */
final class Stores {
  private static final int FIRST_KEY = 1;

  private final WorkspacePaths paths;

  Stores(WorkspacePaths paths) {
    this.paths = paths;
  }

  EventLog log() {
    folder();
    return SqliteEventLog.open(paths.eventLog());
  }

  ContactVault vault() {
    folder();
    makeFirstKey();
    return SqliteContactVault.open(
        paths.contactVault(),
        VaultKeyFile.load(paths.vaultKey()),
        references -> SqliteFormStore.forget(paths.normalForms(), references));
  }

  FormStore forms(String stamp) {
    try {
      OwnerOnly.folder(paths.cache());
      return SqliteFormStore.open(paths.normalForms(), stamp);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Makes the vault's key when nothing that needs an older one is there. */
  void makeFirstKey() {
    if (!Files.exists(paths.vaultKey()) && nothingRefersToAKey()) {
      VaultKeyFile.create(paths.vaultKey(), VaultKey.random(FIRST_KEY));
    }
  }

  /**
   * A second key beside contacts or events made with a first one would part every person in two.
   */
  private boolean nothingRefersToAKey() {
    return !Files.exists(paths.contactVault()) && isLogEmpty();
  }

  private boolean isLogEmpty() {
    if (!Files.exists(paths.eventLog())) {
      return true;
    }
    try (EventLog log = log()) {
      return log.snapshot().markers().isEmpty();
    }
  }

  private void folder() {
    try {
      OwnerOnly.folder(paths.log());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
