package withers.contact.sqlite;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contact.RandomContacts;
import withers.sqlite.SqliteFile;
import withers.sqlite.Upgrading;

/** The same vault, when contacts come among the recent ones and do not stay there. */
class SettledContactVaultTest extends SqliteContactVaultTest {

  @Override
  protected ContactVault open() {
    return open(new Tables(0, 0));
  }

  private ContactVault open(Tables tables) {
    SqliteFile file = new SqliteFile(file(), VaultSchema.FORMAT, Upgrading.AT_ONCE);
    return SqliteContactVault.open(file, KEY, references -> {}, tables);
  }

  @Test
  void contacts_are_found_wherever_they_are() {
    Set<ContactRef> stored = new HashSet<>();
    RandomContacts random = new RandomContacts(5);
    for (int batch = 0; batch < 40; batch++) {
      try (ContactVault vault = open(tables(batch))) {
        List<Contact> contacts = random.contacts(1 + batch % 9);
        contacts.forEach(contact -> stored.add(vault.reference(contact)));
        vault.store(contacts.stream().map(this::deposit).toList());
        assertThat(vault.size()).isEqualTo(stored.size());
        assertThat(vault.findAll(stored).keySet()).isEqualTo(stored);
        assertThat(vault.store(contacts.stream().map(this::deposit).toList())).isZero();
      }
    }
  }

  @Test
  void what_was_looked_for_in_vain_is_looked_for_again_once_anybody_has_written() {
    List<Contact> contacts = new RandomContacts(7).contacts(30).stream().distinct().toList();
    List<ContactRef> references = contacts.stream().map(KEY::reference).toList();
    try (ContactVault here = open(new Tables(0, 1000));
        ContactVault there = open(new Tables(1000, 1000))) {
      assertThat(here.stored(references)).isEmpty();
      there.store(contacts.subList(0, 10).stream().map(this::deposit).toList());
      assertThat(here.store(contacts.subList(0, 15).stream().map(this::deposit).toList()))
          .isEqualTo(5);

      assertThat(here.stored(references)).hasSize(15);
      here.store(contacts.subList(15, 20).stream().map(this::deposit).toList());
      assertThat(here.store(contacts.stream().map(this::deposit).toList()))
          .isEqualTo(contacts.size() - 20);
      assertThat(here.size()).isEqualTo(contacts.size());
      assertThat(here.stored(references)).isEqualTo(Set.copyOf(references));
    }
  }

  /** Small loads, and now and then one that is large beside what is there. */
  private static Tables tables(int batch) {
    return new Tables(batch % 5 == 4 ? 1000 : batch % 2, 20);
  }
}
