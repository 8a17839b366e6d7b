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

/** The same vault, when contacts do not stay among the recent ones. */
class SettledContactVaultTest extends SqliteContactVaultTest {

  @Override
  protected ContactVault open() {
    return open(0);
  }

  private ContactVault open(long fewRecent) {
    SqliteFile file = new SqliteFile(file(), VaultSchema.FORMAT, Upgrading.AT_ONCE);
    return SqliteContactVault.open(file, KEY, references -> {}, fewRecent);
  }

  @Override
  String newest() {
    return "contact";
  }

  @Test
  void contacts_are_found_wherever_they_are() {
    Set<ContactRef> stored = new HashSet<>();
    RandomContacts random = new RandomContacts(5);
    for (int batch = 0; batch < 40; batch++) {
      try (ContactVault vault = open(20)) {
        List<Contact> contacts = random.contacts(1 + batch % 9);
        contacts.forEach(contact -> stored.add(vault.reference(contact)));
        vault.store(contacts.stream().map(this::deposit).toList());
        assertThat(vault.size()).isEqualTo(stored.size());
        assertThat(vault.findAll(stored).keySet()).isEqualTo(stored);
        assertThat(vault.store(contacts.stream().map(this::deposit).toList())).isZero();
      }
    }
  }
}
