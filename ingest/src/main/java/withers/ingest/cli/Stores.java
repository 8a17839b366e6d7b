package withers.ingest.cli;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
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

  /** Closes both at once: each empties its write-ahead log and waits for the disk. */
  @Override
  public void close() {
    CompletableFuture<Void> vaultClosed = CompletableFuture.runAsync(vault::close);
    try {
      log.close();
    } finally {
      join(vaultClosed);
    }
  }

  private static void join(CompletableFuture<Void> closed) {
    try {
      closed.join();
    } catch (CompletionException failed) {
      throw failed.getCause() instanceof RuntimeException cause ? cause : failed;
    }
  }
}
