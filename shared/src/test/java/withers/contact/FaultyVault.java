package withers.contact;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;

/** A vault with one fault, for testing the contract suite itself. */
final class FaultyVault implements ContactVault {

  /** What is wrong with a vault. */
  enum Fault {
    NONE,
    DOES_NOTHING,
    LOSES_THE_TOWN,
    STORES_ONE_OF_SEVERAL,
    FINDS_ALL_BUT_ONE,
    COUNTS_EVERYTHING,
    STORES_THE_FORGOTTEN_AGAIN,
    IGNORES_RECORDS,
    FORGETS_NOTHING,
    CALLS_NOTHING_FORGOTTEN,
    READMITS_NOBODY,
    AWAITS_NOBODY,
    LISTS_NO_RECORDS,
    SHOWS_ALL_BUT_ONE,
    WORKS_WHEN_CLOSED
  }

  private final Fault fault;
  private final MemoryContactVault vault;
  private Optional<ContactRef> left = Optional.empty();

  FaultyVault(Fault fault, VaultKey key) {
    this.fault = fault;
    this.vault = new MemoryContactVault(key);
  }

  @Override
  public ContactRef reference(Contact contact) {
    return fault == Fault.DOES_NOTHING ? new ContactRef(0, 0, 0) : vault.reference(contact);
  }

  @Override
  public int store(Collection<Deposit> deposits) {
    if (fault == Fault.DOES_NOTHING) {
      return 0;
    }
    int stored = vault.store(deposits);
    return fault == Fault.COUNTS_EVERYTHING ? deposits.size() : stored;
  }

  @Override
  public void storeAll(List<Storing> waiting) {
    waiting.stream()
        .limit(fault == Fault.STORES_ONE_OF_SEVERAL ? 1 : waiting.size())
        .forEach(Storing::store);
  }

  @Override
  public Optional<Contact> find(ContactRef reference) {
    Optional<Contact> found = vault.find(reference);
    return fault == Fault.LOSES_THE_TOWN ? found.map(FaultyVault::withoutTown) : found;
  }

  @Override
  public Map<ContactRef, Contact> findAll(Collection<ContactRef> references) {
    Map<ContactRef, Contact> found = vault.findAll(references);
    if (fault == Fault.FINDS_ALL_BUT_ONE) {
      found.keySet().stream().findFirst().ifPresent(found::remove);
    }
    return found;
  }

  private static Contact withoutTown(Contact c) {
    return new Contact(
        c.name(),
        c.givenName(),
        c.familyName(),
        c.phones(),
        c.emails(),
        c.addressLines(),
        c.postcode(),
        "",
        c.region(),
        c.country());
  }

  @Override
  public boolean isForgotten(ContactRef reference) {
    return fault != Fault.CALLS_NOTHING_FORGOTTEN && vault.isForgotten(reference);
  }

  @Override
  public void forget(Collection<ContactRef> references, Collection<RecordName> records) {
    switch (fault) {
      case DOES_NOTHING, FORGETS_NOTHING -> {}
      case IGNORES_RECORDS -> vault.forget(references, List.of());
      case STORES_THE_FORGOTTEN_AGAIN -> vault.forget(List.of(), records);
      default -> vault.forget(references, records);
    }
  }

  @Override
  public void readmit(Collection<ContactRef> references, Collection<RecordName> records) {
    if (fault != Fault.DOES_NOTHING && fault != Fault.READMITS_NOBODY) {
      vault.readmit(references, records);
    }
  }

  @Override
  public Set<ContactRef> awaited() {
    return fault == Fault.DOES_NOTHING || fault == Fault.AWAITS_NOBODY ? Set.of() : vault.awaited();
  }

  @Override
  public Erasures erasures() {
    return fault == Fault.DOES_NOTHING || fault == Fault.LISTS_NO_RECORDS
        ? new Erasures(vault.erasures().references(), Set.of())
        : vault.erasures();
  }

  @Override
  public void visit(BiConsumer<ContactRef, Contact> visitor) {
    if (fault == Fault.SHOWS_ALL_BUT_ONE) {
      vault.visit((reference, contact) -> showUnlessFirst(reference, contact, visitor));
    } else if (fault != Fault.DOES_NOTHING) {
      vault.visit(visitor);
    }
  }

  private void showUnlessFirst(
      ContactRef reference, Contact contact, BiConsumer<ContactRef, Contact> visitor) {
    if (left.isEmpty()) {
      left = Optional.of(reference);
    }
    if (!left.equals(Optional.of(reference))) {
      visitor.accept(reference, contact);
    }
  }

  @Override
  public long size() {
    return vault.size();
  }

  @Override
  public void close() {
    if (fault != Fault.DOES_NOTHING && fault != Fault.WORKS_WHEN_CLOSED) {
      vault.close();
    }
  }
}
