package withers.ingest.cli;

import java.nio.file.Files;
import withers.contact.ContactVault;
import withers.contact.VaultKey;
import withers.contact.VaultKeyFile;
import withers.contact.sqlite.SqliteContactVault;
import withers.log.EventLog;
import withers.log.sqlite.SqliteEventLog;
import withers.workspace.WorkspacePaths;

/** A workspace's log and vault, made with the first import. */
record Stores(EventLog log, ContactVault vault) implements AutoCloseable {

  private static final int FIRST_KEY = 1;

  /**
   * Opens them. A vault that has lost its key is refused, never given a new one: its references
   * could not be made again.
   */
  static Stores open(WorkspacePaths paths) {
    if (!Files.exists(paths.vaultKey()) && !Files.exists(paths.contactVault())) {
      VaultKeyFile.create(paths.vaultKey(), VaultKey.random(FIRST_KEY));
    }
    VaultKey key = VaultKeyFile.load(paths.vaultKey());
    EventLog log = SqliteEventLog.open(paths.eventLog());
    try {
      return new Stores(log, SqliteContactVault.open(paths.contactVault(), key));
    } catch (RuntimeException failed) {
      log.close();
      throw failed;
    }
  }

  @Override
  public void close() {
    vault.close();
    log.close();
  }
}
