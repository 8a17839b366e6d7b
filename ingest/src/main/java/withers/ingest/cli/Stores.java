package withers.ingest.cli;

import withers.contact.ContactVault;
import withers.log.EventLog;
import withers.workspace.Workspace;

/** A workspace's log and vault, made with the first import. */
record Stores(EventLog log, ContactVault vault) implements AutoCloseable {

  /**
   * Opens them. A vault that has lost its key is refused, never given a new one: its references
   * could not be made again.
   */
  static Stores open(Workspace workspace) {
    ContactVault vault = workspace.openVault();
    try {
      return new Stores(workspace.openLog(), vault);
    } catch (RuntimeException failed) {
      vault.close();
      throw failed;
    }
  }

  @Override
  public void close() {
    vault.close();
    log.close();
  }
}
