package withers.contact.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contact.ContactVaultContract;
import withers.contact.RandomContacts;
import withers.contact.TaggedFields;
import withers.contact.VaultDamagedException;
import withers.contact.VaultKey;
import withers.contact.VaultUnavailableException;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.sqlite.SqliteFile;
import withers.sqlite.SqliteFormat;
import withers.sqlite.Upgrading;

class SqliteContactVaultTest extends ContactVaultContract {

  @TempDir private Path folder;

  @Override
  protected ContactVault open() {
    return SqliteContactVault.open(file(), KEY);
  }

  @Override
  protected ContactVault reopened(ContactVault vault) {
    vault.close();
    return open();
  }

  @Test
  void files_are_for_their_owner_alone() throws IOException {
    try (ContactVault vault = open()) {
      vault.store(List.of(deposit(new RandomContacts(1).contact())));
      for (Path each : files()) {
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(each)))
            .isEqualTo("rw-------");
      }
      assertThat(files()).hasSize(3);
    }
  }

  @Test
  void nothing_of_a_forgotten_person_stays_on_the_disk() throws IOException {
    Contact person =
        new Contact(
            "Marguerita Quillfeather", "", "", List.of(), List.of(), List.of(), "", "", "", "");
    try (ContactVault vault = open()) {
      List<ContactVault.Deposit> others =
          new RandomContacts(2).contacts(300).stream().map(this::deposit).toList();
      vault.store(Stream.concat(others.stream(), Stream.of(deposit(person))).toList());
      assertThat(onDisk("Quillfeather")).isTrue();
      vault.forget(List.of(vault.reference(person)), List.of());
      assertThat(onDisk("Quillfeather")).isFalse();
    }
    assertThat(onDisk("Quillfeather")).isFalse();
    assertThat(onDisk("Quay Row")).isTrue();
  }

  @Test
  void what_was_stored_stands_in_the_file_itself_once_the_vault_rests() throws IOException {
    List<Contact> contacts = new RandomContacts(8).contacts(300);
    Path copy = folder.resolve("copy");
    try (ContactVault vault = open()) {
      vault.store(contacts.stream().map(this::deposit).toList());
      vault.rest();
      Files.copy(file(), copy);
      vault.store(List.of(deposit(new RandomContacts(9).contact())));
      assertThat(vault.size()).isEqualTo(301);
    }
    try (ContactVault vault = SqliteContactVault.open(copy, KEY)) {
      assertThat(vault.size()).isEqualTo(300);
    }
  }

  @Test
  void what_was_made_of_a_contact_is_forgotten_before_it() {
    Contact person = new RandomContacts(5).contact();
    ContactRef reference = KEY.reference(person);
    List<ContactRef> forgotten = new ArrayList<>();
    try (ContactVault vault = SqliteContactVault.open(file(), KEY, forgotten::addAll)) {
      vault.store(List.of(deposit(person)));
      vault.forget(List.of(reference), List.of());
    }
    assertThat(forgotten).containsExactly(reference);
    SqliteContactVault.Forgetting failing =
        references -> {
          throw new VaultUnavailableException("in use");
        };
    Contact other = new RandomContacts(6).contact();
    try (ContactVault vault = SqliteContactVault.open(file(), KEY, failing)) {
      vault.store(List.of(deposit(other)));
      assertThatThrownBy(() -> vault.forget(List.of(KEY.reference(other)), List.of()))
          .hasMessage("in use");
      assertThat(vault.find(KEY.reference(other))).hasValue(other);
    }
  }

  @Test
  void two_programs_can_use_it_in_turn() {
    List<Contact> contacts = new RandomContacts(3).contacts(20);
    try (ContactVault here = open();
        ContactVault there = open()) {
      here.store(contacts.subList(0, 10).stream().map(this::deposit).toList());
      there.store(contacts.subList(5, 20).stream().map(this::deposit).toList());
      assertThat(here.size()).isEqualTo(20);
      there.forget(List.of(there.reference(contacts.get(0))), List.of());
      assertThat(here.isForgotten(here.reference(contacts.get(0)))).isTrue();
    }
  }

  @Test
  void refuses_another_key_of_the_same_id() {
    open().close();
    assertThatThrownBy(() -> SqliteContactVault.open(file(), VaultKey.random(KEY.id())))
        .isInstanceOf(VaultUnavailableException.class)
        .hasMessage(
            "Expected the key 1 that the contact vault was filled with, but found another of that"
                + " id; restore the right one from its backup");
  }

  @Test
  void refuses_another_kind_of_file() throws IOException {
    Files.writeString(file(), "name,phone\n".repeat(1000));
    assertThatThrownBy(this::open)
        .isInstanceOf(VaultUnavailableException.class)
        .hasMessage("Expected the contact vault, but found another kind of file: " + file());
  }

  @Test
  void changed_details_are_noticed_and_not_shown() throws SQLException {
    Contact person =
        new Contact("Bo Brandt", "", "", List.of(), List.of(), List.of(), "", "", "", "");
    ContactRef reference = KEY.reference(person);
    try (ContactVault vault = open()) {
      vault.store(List.of(deposit(person)));
    }
    change(
        "UPDATE %s SET fields = CAST(replace(hex(fields), '4272', '4273') AS BLOB)"
            .formatted(newest()));
    assertNoticed(
        reference, "A stored contact is not as it was written; restore a backup of the vault");
    change("UPDATE %s SET fields = x'010100000009426f204273616e6474'".formatted(newest()));
    assertNoticed(
        reference,
        "The contact behind %s is not as it was written; restore a backup of the vault"
            .formatted(reference));
  }

  /** The table in which a contact is that was stored just now. */
  String newest() {
    return "contact";
  }

  @Test
  void a_vault_of_an_earlier_version_is_brought_up_to_this_one() throws SQLException {
    List<Contact> contacts = new RandomContacts(4).contacts(4);
    SqliteFormat now = VaultSchema.FORMAT;
    SqliteFormat first =
        new SqliteFormat(
            now.what(),
            now.applicationId(),
            now.pragmas(),
            now.schema().subList(0, 1),
            now.unavailable(),
            now.damaged());
    new SqliteFile(file(), first, Upgrading.REFUSED).openForWriting().close();
    insertAsBefore(contacts.get(0));
    insertAsBefore(contacts.get(1));

    assertThatThrownBy(() -> SqliteContactVault.open(file(), KEY))
        .isInstanceOf(VaultUnavailableException.class)
        .hasMessage(
            "Expected the contact vault of format 2, but found format 1, which an older program wrote; a command on its workspace brings it up: "
                + file());
    assertThatThrownBy(() -> openAnd(this::failBefore)).hasMessage("before");
    List<String> told = new ArrayList<>();
    for (int times = 0; times < 2; times++) {
      try (ContactVault vault = openAnd(file -> told.addAll(bringUp(file)))) {
        vault.store(contacts.subList(1, 4).stream().map(this::deposit).toList());
        assertThat(vault.size()).isEqualTo(4);
        for (Contact contact : contacts) {
          assertThat(vault.find(vault.reference(contact))).hasValue(contact);
        }
        assertThat(vault.findAll(contacts.stream().map(vault::reference).toList()))
            .containsOnlyKeys(contacts.stream().map(vault::reference).toList());
      }
    }
    assertThat(told).containsExactly("contact vault 1 2 true", "then false");
    assertThatThrownBy(() -> new SqliteFile(file(), first, Upgrading.REFUSED).openForWriting())
        .isInstanceOf(VaultUnavailableException.class)
        .hasMessage(
            "Expected the contact vault of format 1 to 1, but found format 2, which a newer program wrote; use that one: "
                + file());
  }

  private ContactVault openAnd(Upgrading upgrading) {
    return SqliteContactVault.open(file(), KEY, references -> {}, upgrading);
  }

  private void failBefore(Upgrading.Outdated file) {
    throw new IllegalStateException("before");
  }

  private static List<String> bringUp(Upgrading.Outdated file) {
    String before = "%s %d %d %s".formatted(file.what(), file.from(), file.to(), file.isStill());
    file.bringUp();
    file.bringUp(); // as if another had been first
    return List.of(before, "then " + file.isStill());
  }

  private void insertAsBefore(Contact contact) throws SQLException {
    change(
        "INSERT INTO contact VALUES(x'%s', x'%s')"
            .formatted(
                HexFormat.of().formatHex(References.bytes(KEY.reference(contact))),
                HexFormat.of().formatHex(TaggedFields.write(contact))));
  }

  private void assertNoticed(ContactRef reference, String message) {
    try (ContactVault vault = open()) {
      assertThatThrownBy(() -> vault.find(reference))
          .isInstanceOf(VaultDamagedException.class)
          .hasMessage(message);
    }
  }

  Path file() {
    return folder.resolve("contacts.db");
  }

  private List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.toList();
    }
  }

  private boolean onDisk(String text) throws IOException {
    for (Path each : files()) {
      String bytes = Files.readString(each, StandardCharsets.ISO_8859_1);
      if (bytes.contains(text)) {
        return true;
      }
    }
    return false;
  }

  ContactVault.Deposit deposit(Contact contact) {
    return new ContactVault.Deposit(contact, new SourceId("cliff-clinic"), new RecordKey("P-1"));
  }

  private void change(String sql) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
        Statement statement = connection.createStatement()) {
      assertThat(statement.executeUpdate(sql)).isEqualTo(1);
    }
  }
}
