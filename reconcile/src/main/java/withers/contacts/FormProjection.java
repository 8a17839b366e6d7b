package withers.contacts;

import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contact.FormStore;
import withers.matching.form.FormedContact;
import withers.matching.form.NormalForms;

/**
 * Normal forms as a projection over the vault: what was made once is read, the rest is made and
 * kept. What is found is the same as if everything were made anew. Safe for several threads.
 * Closing it keeps what was made since; it does not close the store.
 */
public final class FormProjection implements FormFinder, AutoCloseable {

  /**
   * So many are written together, some 150 bytes each: references are random, and each time nearly
   * all of the store's index is written again.
   */
  private static final int TOGETHER = 1 << 16;

  private final Supplier<ContactVault> vault;
  private final FormStore store;
  private final NormalForms forms;
  private Map<ContactRef, byte[]> fresh = new HashMap<>();
  private long remade;
  private long changed;

  /**
   * @param vault asked for when the first contact is looked up
   * @param store what is kept of these contacts, by these forms' stamp
   */
  public FormProjection(Supplier<ContactVault> vault, FormStore store, NormalForms forms) {
    this.vault = vault;
    this.store = store;
    this.forms = forms;
  }

  @Override
  public Map<ContactRef, FormedContact> find(Collection<ContactRef> references) {
    FormStore.Kept kept = store.find(references);
    addFresh(references, kept.current());
    Set<ContactRef> stored = vault.get().stored(kept.current().keySet());
    kept.current().keySet().retainAll(stored);
    Map<ContactRef, FormedContact> found = new HashMap<>();
    kept.current().forEach((reference, bytes) -> found.put(reference, forms.read(bytes)));
    Set<ContactRef> others = new HashSet<>(references);
    others.removeAll(stored);
    vault
        .get()
        .findAll(others)
        .forEach((reference, contact) -> found.put(reference, made(reference, contact, kept)));
    return found;
  }

  private synchronized void addFresh(
      Collection<ContactRef> references, Map<ContactRef, byte[]> current) {
    for (ContactRef reference : references) {
      byte[] bytes = fresh.get(reference);
      if (bytes != null) {
        current.put(reference, bytes);
      }
    }
  }

  private FormedContact made(ContactRef reference, Contact contact, FormStore.Kept kept) {
    FormedContact form = forms.formed(contact);
    keep(reference, NormalForms.bytes(form), kept.outdated().get(reference));
    return form;
  }

  /** Several threads may make one form at a time; it counts once. */
  private synchronized void keep(ContactRef reference, byte[] bytes, byte @Nullable [] outdated) {
    boolean isFirst = fresh.put(reference, bytes) == null;
    if (isFirst && outdated != null) {
      remade++;
      changed += Arrays.equals(bytes, outdated) ? 0 : 1;
    }
    if (fresh.size() >= TOGETHER) {
      close();
    }
  }

  /** How many contacts had an outdated form, which was made anew. */
  public synchronized long remade() {
    return remade;
  }

  /** How many of these have another form than before. */
  public synchronized long changed() {
    return changed;
  }

  /** Keeps what was made and is not kept yet. */
  @Override
  public synchronized void close() {
    if (!fresh.isEmpty()) {
      store.keep(fresh);
      fresh = new HashMap<>();
    }
  }
}
