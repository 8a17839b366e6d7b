package withers.reconcile.cli;

import java.nio.file.Files;
import java.util.Collection;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contact.VaultDamagedException;
import withers.contact.VaultKeyFile;
import withers.contact.sqlite.SqliteContactVault;
import withers.log.EventLog;
import withers.log.sqlite.SqliteEventLog;
import withers.source.InputRefusedException;
import withers.workspace.WorkspacePaths;

/** A workspace's log and vault. The vault is opened with the first contact that is looked up. */
final class Stores implements AutoCloseable {
  private final WorkspacePaths paths;
  private final EventLog log;
  private @Nullable ContactVault vault;

  private Stores(WorkspacePaths paths, EventLog log) {
    this.paths = paths;
    this.log = log;
  }

  /**
   * Opens what imports have made.
   *
   * @throws InputRefusedException when nothing was imported yet
   */
  static Stores open(WorkspacePaths paths) {
    if (!Files.exists(paths.eventLog())) {
      throw new InputRefusedException(
          "Expected imports on the log, but found none: import exports first, with \"withers ingest\"");
    }
    return new Stores(paths, SqliteEventLog.open(paths.eventLog()));
  }

  EventLog log() {
    return log;
  }

  Optional<Contact> find(ContactRef reference) {
    return vault().find(reference);
  }

  /**
   * Stops when contacts that were looked for are lost: what they say would be taken for "can't be
   * told", and follow-ups would close for no reason.
   *
   * @param missing contacts that were not found
   * @throws VaultDamagedException when any of them was not forgotten on request
   */
  void requireForgotten(Collection<ContactRef> missing) {
    long lost = missing.stream().filter(reference -> !vault().isForgotten(reference)).count();
    if (lost > 0) {
      throw new VaultDamagedException(
          "Expected the vault to hold the contacts that the log refers to, but found %d or more missing; restore it from its backup: %s"
              .formatted(lost, paths.contactVault()));
    }
  }

  private synchronized ContactVault vault() {
    ContactVault open = vault;
    if (open == null) {
      open = SqliteContactVault.open(paths.contactVault(), VaultKeyFile.load(paths.vaultKey()));
      vault = open;
    }
    return open;
  }

  @Override
  public synchronized void close() {
    if (vault != null) {
      vault.close();
    }
    log.close();
  }
}
