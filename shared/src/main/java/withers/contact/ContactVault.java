package withers.contact;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * Where people's details live: outside the log, behind references. Safe for use by several threads;
 * one process writes at a time. Closing releases files; a closed vault refuses every call.
 */
public interface ContactVault extends AutoCloseable {

  /**
   * A contact, and the record that states it.
   *
   * @param reference the contact's reference by this vault, where it was made before; empty to have
   *     it made
   */
  record Deposit(Contact contact, Optional<ContactRef> reference, SourceId source, RecordKey key) {

    /** A contact whose reference nobody has made yet. */
    public Deposit(Contact contact, SourceId source, RecordKey key) {
      this(contact, Optional.empty(), source, key);
    }

    /** The reference that was made before, or else the one that this key makes. */
    public ContactRef referenceBy(VaultKey maker) {
      return reference.orElseGet(() -> maker.reference(contact));
    }
  }

  /** A record by its source and key. */
  record RecordName(SourceId source, RecordKey key) {}

  /** The reference of a contact. Pure: it stores nothing. */
  ContactRef reference(Contact contact);

  /**
   * Stores contacts, all or none, durable on return. Those that are suppressed, by reference or by
   * record, are left out; those already there stay as they are.
   *
   * @return how many were new
   */
  int store(Collection<Deposit> deposits);

  /** Contacts that wait to be stored. */
  @FunctionalInterface
  interface Storing {

    /** Stores them, as {@link #store} does. */
    int store();
  }

  /** Does what of {@link #store} changes nothing yet, such as putting contacts into bytes. */
  default Storing prepare(Collection<Deposit> deposits) {
    return () -> store(deposits);
  }

  /**
   * Stores what waits, in this order, each all or none. Together it may cost a fraction of one
   * after another.
   *
   * @param waiting prepared by this vault
   */
  default void storeAll(List<Storing> waiting) {
    waiting.forEach(Storing::store);
  }

  /**
   * The contact behind a reference, or empty when it was forgotten, suppressed, or never stored.
   */
  Optional<Contact> find(ContactRef reference);

  /**
   * The contacts behind these references, those that are there. For many this costs a fraction of
   * finding them one by one.
   */
  default Map<ContactRef, Contact> findAll(Collection<ContactRef> references) {
    Map<ContactRef, Contact> found = new HashMap<>();
    for (ContactRef reference : references) {
      find(reference).ifPresent(contact -> found.put(reference, contact));
    }
    return found;
  }

  /** Those of these references behind which a contact is stored, without a look at it. */
  default Set<ContactRef> stored(Collection<ContactRef> references) {
    return findAll(references).keySet();
  }

  /**
   * Whether the contact behind the reference was forgotten on request, or kept out because a
   * forgotten record stated it: what it would have said can't be told, and is never a mismatch.
   */
  boolean isForgotten(ContactRef reference);

  /**
   * Deletes contacts and keeps them out from now on: neither these references nor anything that
   * these records state is stored again.
   */
  void forget(Collection<ContactRef> references, Collection<RecordName> records);

  /**
   * Keeps these out no longer: who is behind these references, and what these records state, is
   * stored when it comes again. Until it has come, it {@linkplain #isForgotten is forgotten} as
   * before.
   */
  void readmit(Collection<ContactRef> references, Collection<RecordName> records);

  /**
   * References behind which nothing is stored, though none of them is kept out for its own sake: to
   * have them, records that are as they were have to be read, too.
   */
  Set<ContactRef> awaited();

  /** What is kept out from now on, and always was since. */
  Erasures erasures();

  /**
   * Shows every contact that is stored, in no order. Nobody may write to the vault meanwhile.
   *
   * @throws VaultDamagedException when one is not as it was written
   */
  void visit(BiConsumer<ContactRef, Contact> visitor);

  /** How many contacts are stored. */
  long size();

  /**
   * Does now what closing would have to do, for when nothing more is stored for a while. Nobody
   * needs to wait for it: what was stored is durable without.
   */
  default void rest() {}

  @Override
  void close();
}
