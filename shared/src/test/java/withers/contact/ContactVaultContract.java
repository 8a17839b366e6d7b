package withers.contact;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.contact.ContactVault.Deposit;
import withers.contact.ContactVault.RecordName;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * Everything that a {@link ContactVault} promises. No test here passes on a vault that does
 * nothing.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
public abstract class ContactVaultContract {

  /** The key of every vault under test. */
  protected static final VaultKey KEY = new VaultKey(1, new byte[VaultKey.LENGTH]);

  private static final SourceId CLINIC = new SourceId("cliff-clinic");
  private static final SourceId SHELTER = new SourceId("lighthouse-shelter");

  private final RandomContacts random = new RandomContacts(19);

  /** Opens the vault of the running test, empty at the first call. */
  protected abstract ContactVault open();

  /**
   * What happens between what a test does and what it looks at: nothing, or closing and opening.
   */
  protected ContactVault reopened(ContactVault vault) {
    return vault;
  }

  @Test
  void gives_back_what_was_stored_as_it_was_written() {
    ContactVault vault = open();
    List<Contact> contacts = random.contacts(500);
    assertThat(vault.store(contacts.stream().map(c -> by(CLINIC, "P-1", c)).toList()))
        .isEqualTo(500);
    vault = reopened(vault);
    for (Contact contact : contacts) {
      assertThat(vault.find(vault.reference(contact))).contains(contact);
      assertThat(vault.isForgotten(vault.reference(contact))).isFalse();
    }
    assertThat(vault.size()).isEqualTo(500);
    vault.close();
  }

  @Test
  void what_is_prepared_is_stored_when_that_is_asked_for() {
    ContactVault vault = open();
    List<Contact> contacts = random.contacts(40);
    ContactVault.Storing storing =
        vault.prepare(contacts.stream().map(c -> by(CLINIC, "P-1", c)).toList());
    assertThat(vault.size()).isZero();
    vault.store(contacts.stream().limit(10).map(c -> by(SHELTER, "S-1", c)).toList());
    assertThat(storing.store()).isEqualTo(30);
    vault.rest();
    assertThat(vault.size()).isEqualTo(40);
    vault.close();
  }

  @Test
  void what_was_prepared_bit_by_bit_is_stored_all_at_once() {
    ContactVault vault = open();
    List<Contact> contacts = random.contacts(400);
    Contact forgotten = contacts.get(7);
    List<ContactVault.Storing> waiting = new ArrayList<>();
    for (int from = 0;
        from < contacts.size();
        from += 100) { // half of each comes again in the next
      List<Contact> some = contacts.subList(from, Math.min(from + 150, contacts.size()));
      waiting.add(vault.prepare(some.stream().map(c -> by(CLINIC, "P-1", c)).toList()));
    }
    vault.store(contacts.stream().limit(10).map(c -> by(SHELTER, "S-1", c)).toList());
    vault.forget(List.of(vault.reference(forgotten)), List.of());

    vault.storeAll(waiting);
    vault.storeAll(List.of());

    vault = reopened(vault);
    assertThat(vault.size()).isEqualTo(399);
    for (Contact contact : contacts) {
      assertThat(vault.find(vault.reference(contact)))
          .isEqualTo(contact.equals(forgotten) ? Optional.empty() : Optional.of(contact));
    }
    vault.close();
  }

  @Test
  void finds_many_at_once_and_leaves_out_those_that_are_not_there() {
    ContactVault vault = open();
    List<Contact> contacts = random.contacts(1_001);
    List<Contact> absent = random.contacts(7);
    vault.store(contacts.stream().map(c -> by(CLINIC, "P-1", c)).toList());
    vault = reopened(vault);
    Map<ContactRef, Contact> expected = new HashMap<>();
    for (Contact contact : contacts) {
      expected.put(vault.reference(contact), contact);
    }
    List<ContactRef> wanted = new ArrayList<>(expected.keySet());
    absent.stream().map(vault::reference).forEach(wanted::add);
    wanted.add(wanted.get(0));
    assertThat(vault.findAll(wanted)).isEqualTo(expected);
    for (int few = 1; few < 8; few++) {
      assertThat(vault.findAll(wanted.subList(0, few))).hasSize(few);
    }
    assertThat(vault.findAll(List.of())).isEmpty();
    assertThat(vault.stored(wanted)).isEqualTo(expected.keySet());
    assertThat(vault.stored(List.of())).isEmpty();
    vault.close();
  }

  @Test
  void a_reference_is_the_key_s_and_stores_nothing() {
    ContactVault vault = open();
    Contact contact = random.contact();
    assertThat(vault.reference(contact)).isEqualTo(KEY.reference(contact));
    assertThat(vault.find(vault.reference(contact))).isEmpty();
    assertThat(vault.isForgotten(vault.reference(contact))).isFalse();
    assertThat(vault.size()).isZero();
    vault.close();
  }

  @Test
  void counts_what_was_new_and_keeps_what_was_there() {
    ContactVault vault = open();
    Contact decomposed = named("Zoe\u0308");
    Contact composed = named("Zoë");
    Contact other = random.contact();
    assertThat(vault.store(List.of(by(CLINIC, "P-1", decomposed), by(CLINIC, "P-2", decomposed))))
        .isEqualTo(1);
    vault = reopened(vault);
    assertThat(vault.store(List.of(by(SHELTER, "S-1", composed), by(CLINIC, "P-3", other))))
        .isEqualTo(1);
    assertThat(vault.find(vault.reference(composed))).contains(decomposed);
    assertThat(vault.store(List.of())).isZero();
    assertThat(vault.size()).isEqualTo(2);
    vault.close();
  }

  @Test
  void a_contact_may_bring_the_reference_that_was_made_of_it() {
    ContactVault vault = open();
    Contact person = random.contact();
    Optional<ContactRef> reference = Optional.of(vault.reference(person));
    RecordKey key = new RecordKey("P-1");
    assertThat(vault.store(List.of(new Deposit(person, reference, CLINIC, key)))).isEqualTo(1);
    assertThat(vault.store(List.of(by(SHELTER, "S-1", person)))).isZero();
    assertThat(vault.find(reference.orElseThrow())).contains(person);
    vault.close();
  }

  @Test
  void a_forgotten_contact_is_gone_and_is_never_stored_again() {
    ContactVault vault = open();
    Contact person = random.contact();
    Contact other = random.contact();
    vault.store(List.of(by(CLINIC, "P-1", person), by(CLINIC, "P-2", other)));
    ContactRef reference = vault.reference(person);
    vault.forget(List.of(reference), List.of());
    vault = reopened(vault);
    assertThat(vault.find(reference)).isEmpty();
    assertThat(vault.isForgotten(reference)).isTrue();
    assertThat(vault.store(List.of(by(CLINIC, "P-1", person), by(SHELTER, "S-1", person))))
        .isZero();
    assertThat(vault.find(reference)).isEmpty();
    assertThat(vault.find(vault.reference(other))).contains(other);
    assertThat(vault.isForgotten(vault.reference(other))).isFalse();
    assertThat(vault.size()).isEqualTo(1);
    vault.close();
  }

  @Test
  void who_is_let_in_again_is_stored_when_they_come_and_may_be_missing_until_then() {
    ContactVault vault = open();
    Contact person = random.contact();
    Contact other = random.contact();
    vault.store(List.of(by(CLINIC, "P-1", person), by(CLINIC, "P-2", other)));
    ContactRef reference = vault.reference(person);
    ContactRef others = vault.reference(other);
    vault.forget(List.of(reference, others), List.of(record(CLINIC, "P-1"), record(CLINIC, "P-2")));
    assertThat(vault.awaited()).isEmpty();
    vault.readmit(List.of(reference), List.of(record(CLINIC, "P-1")));
    vault = reopened(vault);
    assertThat(vault.find(reference)).isEmpty();
    assertThat(vault.isForgotten(reference)).isTrue();
    assertThat(vault.awaited()).containsExactly(reference);
    assertThat(vault.erasures())
        .isEqualTo(new Erasures(Set.of(others), Set.of(record(CLINIC, "P-2"))));
    assertThat(vault.store(List.of(by(CLINIC, "P-1", person), by(CLINIC, "P-1", other))))
        .isEqualTo(1);
    assertThat(vault.find(reference)).contains(person);
    assertThat(vault.isForgotten(reference)).isFalse();
    assertThat(vault.awaited()).isEmpty();
    assertThat(vault.isForgotten(others)).isTrue();
    vault.forget(List.of(reference), List.of());
    assertThat(vault.find(reference)).isEmpty();
    assertThat(vault.awaited()).isEmpty();
    vault.close();
  }

  @Test
  void nothing_that_a_forgotten_record_states_is_stored() {
    ContactVault vault = open();
    Contact old = random.contact();
    Contact changed = random.contact();
    vault.store(List.of(by(CLINIC, "P-1", old)));
    vault.forget(List.of(vault.reference(old)), List.of(record(CLINIC, "P-1")));
    vault = reopened(vault);
    assertThat(vault.store(List.of(by(CLINIC, "P-1", changed)))).isZero();
    vault = reopened(vault);
    assertThat(vault.find(vault.reference(changed))).isEmpty();
    assertThat(vault.isForgotten(vault.reference(changed))).isTrue();
    assertThat(vault.size()).isZero();
    vault.close();
  }

  @Test
  void records_of_other_sources_and_keys_are_not_meant() {
    ContactVault vault = open();
    Contact person = random.contact();
    Contact neighbour = random.contact();
    vault.forget(List.of(), List.of(record(CLINIC, "P-1")));
    assertThat(
            vault.store(
                List.of(
                    by(CLINIC, "P-1", person),
                    by(CLINIC, "P-10", neighbour),
                    by(SHELTER, "P-1", neighbour))))
        .isEqualTo(1);
    assertThat(vault.isForgotten(vault.reference(person))).isTrue();
    assertThat(vault.find(vault.reference(neighbour))).contains(neighbour);
    vault.close();
  }

  @Test
  void a_contact_that_another_record_states_too_is_stored_for_that() {
    ContactVault vault = open();
    Contact person = random.contact();
    vault.forget(List.of(), List.of(record(CLINIC, "P-1")));
    assertThat(vault.store(List.of(by(CLINIC, "P-1", person)))).isZero();
    assertThat(vault.isForgotten(vault.reference(person))).isTrue();
    assertThat(vault.store(List.of(by(SHELTER, "S-1", person)))).isEqualTo(1);
    vault = reopened(vault);
    assertThat(vault.find(vault.reference(person))).contains(person);
    assertThat(vault.isForgotten(vault.reference(person))).isFalse();
    vault.close();
  }

  @Test
  void what_is_not_there_can_be_forgotten_in_advance_and_twice() {
    ContactVault vault = open();
    Contact person = random.contact();
    ContactRef reference = vault.reference(person);
    vault.forget(List.of(reference, reference), List.of(record(CLINIC, "P-1")));
    vault.forget(List.of(reference), List.of(record(CLINIC, "P-1")));
    assertThat(vault.isForgotten(reference)).isTrue();
    assertThat(vault.store(List.of(by(SHELTER, "S-1", person)))).isZero();
    vault.close();
  }

  @Test
  void lists_what_is_kept_out() {
    ContactVault vault = open();
    assertThat(vault.erasures().isEmpty()).isTrue();
    Contact person = random.contact();
    vault.store(List.of(by(CLINIC, "P-1", person), by(CLINIC, "P-2", random.contact())));
    vault.forget(
        List.of(vault.reference(person)), List.of(record(CLINIC, "P-1"), record(SHELTER, "S-1")));
    vault = reopened(vault);
    vault.store(List.of(by(CLINIC, "P-1", random.contact())));
    assertThat(vault.erasures())
        .isEqualTo(
            new Erasures(
                Set.of(vault.reference(person)),
                Set.of(record(CLINIC, "P-1"), record(SHELTER, "S-1"))));
    vault.close();
  }

  @Test
  void shows_every_contact_once_and_none_that_was_forgotten() {
    ContactVault vault = open();
    List<Contact> contacts = random.contacts(300);
    vault.store(contacts.stream().map(c -> by(CLINIC, "P-1", c)).toList());
    vault.forget(List.of(vault.reference(contacts.get(0))), List.of());
    vault = reopened(vault);
    List<Contact> shown = new ArrayList<>();
    Map<ContactRef, Contact> known = new HashMap<>();
    vault.visit(
        (reference, contact) -> {
          shown.add(contact);
          known.put(reference, contact);
        });
    assertThat(shown).containsExactlyInAnyOrderElementsOf(contacts.subList(1, 300));
    assertThat(known).isEqualTo(vault.findAll(known.keySet()));
    vault.close();
  }

  @Test
  void many_threads_store_and_find_at_once() throws Exception {
    try (ContactVault vault = open()) {
      List<Contact> contacts = random.contacts(400);
      List<Callable<Integer>> work = new ArrayList<>();
      for (int i = 0; i < 8; i++) {
        List<Contact> part = contacts.subList(i * 50, i * 50 + 50);
        work.add(() -> vault.store(part.stream().map(c -> by(CLINIC, "P-1", c)).toList()));
        work.add(() -> found(vault, contacts) / 1000);
      }
      List<Integer> stored = inParallel(work);
      assertThat(stored.stream().mapToInt(Integer::intValue).sum()).isEqualTo(400);
      List<Callable<Integer>> finds = Collections.nCopies(8, () -> found(vault, contacts));
      assertThat(inParallel(finds)).containsOnly(400);
    }
  }

  @Test
  void a_closed_vault_refuses_every_call() {
    ContactVault vault = open();
    ContactRef reference = vault.reference(random.contact());
    vault.close();
    vault.close();
    assertClosed(() -> vault.reference(Contact.NOBODY));
    assertClosed(() -> vault.store(List.of()));
    assertClosed(() -> vault.find(reference));
    assertClosed(() -> vault.findAll(List.of(reference)));
    assertClosed(() -> vault.stored(List.of(reference)));
    assertClosed(() -> vault.isForgotten(reference));
    assertClosed(() -> vault.forget(List.of(reference), List.of()));
    assertClosed(() -> vault.readmit(List.of(reference), List.of()));
    assertClosed(vault::awaited);
    assertClosed(vault::erasures);
    assertClosed(() -> vault.visit((shown, contact) -> {}));
    assertClosed(vault::size);
  }

  private static int found(ContactVault vault, List<Contact> contacts) {
    return (int)
        contacts.stream()
            .filter(c -> vault.find(vault.reference(c)).filter(c::equals).isPresent())
            .count();
  }

  private static <T> List<T> inParallel(List<Callable<T>> work) throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(4);
    try {
      List<T> results = new ArrayList<>();
      for (Future<T> future : threads.invokeAll(work)) {
        results.add(future.get());
      }
      return results;
    } finally {
      threads.shutdownNow();
    }
  }

  private static void assertClosed(Runnable call) {
    assertThatThrownBy(call::run)
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("The contact vault is closed");
  }

  private static Contact named(String name) {
    return new Contact(name, "", "", List.of(), List.of(), List.of(), "", "", "", "");
  }

  private static Deposit by(SourceId source, String key, Contact contact) {
    return new Deposit(contact, source, new RecordKey(key));
  }

  private static RecordName record(SourceId source, String key) {
    return new RecordName(source, new RecordKey(key));
  }
}
