package withers.reconcile.cli;

import java.util.Collection;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contact.VaultDamagedException;
import withers.log.EventLog;
import withers.source.InputRefusedException;
import withers.workspace.Workspace;

/** A workspace's log and vault. The vault is opened with the first contact that is looked up. */
final class Stores implements AutoCloseable {
  private final Workspace workspace;
  private final EventLog log;
  private volatile @Nullable ContactVault vault;

  private Stores(Workspace workspace, EventLog log) {
    this.workspace = workspace;
    this.log = log;
  }

  /**
   * Opens what imports have made.
   *
   * @throws InputRefusedException when nothing was imported yet
   */
  static Stores open(Workspace workspace) {
    return workspace
        .openFilledLog()
        .map(log -> new Stores(workspace, log))
        .orElseThrow(
            () ->
                new InputRefusedException(
                    "Expected imports on the log, but found none: import exports first, with \"withers ingest\""));
  }

  EventLog log() {
    return log;
  }

  Map<ContactRef, Contact> findAll(Collection<ContactRef> references) {
    return vault().findAll(references);
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
              .formatted(lost, workspace.paths().contactVault()));
    }
  }

  ContactVault vault() {
    ContactVault open = vault;
    return open == null ? openedVault() : open;
  }

  private synchronized ContactVault openedVault() {
    ContactVault open = vault;
    if (open == null) {
      open = workspace.openVault();
      vault = open;
    }
    return open;
  }

  @Override
  public synchronized void close() {
    ContactVault open = vault;
    if (open != null) {
      open.close();
    }
    log.close();
  }
}
