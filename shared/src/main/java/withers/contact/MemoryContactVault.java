package withers.contact;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;

/** A vault that keeps everything in memory, for tests and trials. */
public final class MemoryContactVault implements ContactVault {

  private final VaultKey key;
  private final Map<ContactRef, Contact> contacts = new HashMap<>();
  private final Set<ContactRef> forgotten = new HashSet<>();
  private final Set<ContactRef> keptOut = new HashSet<>();
  private final Set<RecordName> forgottenRecords = new HashSet<>();
  private volatile boolean closed;

  public MemoryContactVault(VaultKey key) {
    this.key = key;
  }

  @Override
  public ContactRef reference(Contact contact) {
    requireOpen();
    return key.reference(contact);
  }

  @Override
  public synchronized int store(Collection<Deposit> deposits) {
    requireOpen();
    long before = contacts.size();
    deposits.forEach(this::store);
    return (int) (contacts.size() - before);
  }

  private void store(Deposit deposit) {
    ContactRef reference = deposit.referenceBy(key);
    if (forgottenRecords.contains(new RecordName(deposit.source(), deposit.key()))) {
      keptOut.add(reference);
    } else if (!forgotten.contains(reference)) {
      contacts.putIfAbsent(reference, deposit.contact());
    }
  }

  @Override
  public synchronized Optional<Contact> find(ContactRef reference) {
    requireOpen();
    return Optional.ofNullable(contacts.get(reference));
  }

  @Override
  public synchronized boolean isForgotten(ContactRef reference) {
    requireOpen();
    return !contacts.containsKey(reference)
        && (forgotten.contains(reference) || keptOut.contains(reference));
  }

  @Override
  public synchronized void forget(
      Collection<ContactRef> references, Collection<RecordName> records) {
    requireOpen();
    contacts.keySet().removeAll(Set.copyOf(references));
    forgotten.addAll(references);
    forgottenRecords.addAll(records);
  }

  @Override
  public synchronized void readmit(
      Collection<ContactRef> references, Collection<RecordName> records) {
    requireOpen();
    references.stream().filter(forgotten::remove).forEach(keptOut::add);
    forgottenRecords.removeAll(Set.copyOf(records));
  }

  @Override
  public synchronized Set<ContactRef> awaited() {
    requireOpen();
    Set<ContactRef> awaited = new HashSet<>(keptOut);
    awaited.removeAll(forgotten);
    awaited.removeAll(contacts.keySet());
    return awaited;
  }

  @Override
  public synchronized Erasures erasures() {
    requireOpen();
    return new Erasures(forgotten, forgottenRecords);
  }

  @Override
  public synchronized void visit(BiConsumer<ContactRef, Contact> visitor) {
    requireOpen();
    contacts.forEach(visitor);
  }

  @Override
  public synchronized long size() {
    requireOpen();
    return contacts.size();
  }

  @Override
  public synchronized void close() {
    closed = true;
  }

  private void requireOpen() {
    if (closed) {
      throw new IllegalStateException("The contact vault is closed");
    }
  }
}
