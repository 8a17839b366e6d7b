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
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.contact.ContactRef;
import withers.contact.FormStore;
import withers.contact.VaultUnavailableException;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SqliteFormStoreTest {
  private static final String DAMAGED =
      "The stored normal forms of contacts are damaged: they are made anew.";
  private static final String TODAY = "code of today";

  @TempDir private Path folder;

  @Test
  void gives_back_what_was_kept_and_what_was_kept_last_counts() {
    Map<ContactRef, byte[]> forms = forms(1, 1_001);
    try (FormStore store = open(TODAY)) {
      store.keep(forms(1, 500, "earlier"));
      store.keep(forms);
      assertKept(store, forms);
    }
    try (FormStore store = open(TODAY)) {
      assertKept(store, forms);
      assertThat(store.find(forms(2, 10).keySet()).current()).isEmpty();
      assertThat(store.find(List.of()).current()).isEmpty();
      assertThat(store.troubles()).isEmpty();
    }
  }

  @Test
  void what_another_maker_made_is_outdated_until_it_is_made_anew() {
    Map<ContactRef, byte[]> old = forms(3, 20, "old");
    Map<ContactRef, byte[]> fresh = forms(3, 5, "new");
    try (FormStore store = open("code of yesterday")) {
      store.keep(old);
    }
    try (FormStore store = open(TODAY)) {
      assertThat(store.find(old.keySet()).current()).isEmpty();
      assertEqual(store.find(old.keySet()).outdated(), old);
      store.keep(fresh);
      assertEqual(store.find(old.keySet()).current(), fresh);
      assertThat(store.find(old.keySet()).outdated()).hasSize(15);
    }
  }

  @Test
  void files_are_for_their_owner_alone() throws IOException {
    try (FormStore store = open(TODAY)) {
      store.keep(forms(4, 10));
      for (Path each : files()) {
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(each)))
            .isEqualTo("rw-------");
      }
      assertThat(files()).hasSize(3);
    }
  }

  @Test
  void nothing_of_a_form_that_is_forgotten_or_replaced_stays_on_the_disk() throws IOException {
    ContactRef person = reference(new Random(5));
    ContactRef other = reference(new Random(6));
    try (FormStore store = open(TODAY)) {
      store.keep(forms(5, 300));
      store.keep(Map.of(person, bytes("quillfeather"), other, bytes("thistledown")));
    }
    assertThat(onDisk("quillfeather")).isTrue();

    SqliteFormStore.forget(file(), List.of(person));
    try (FormStore store = open(TODAY)) {
      store.keep(Map.of(other, bytes("married")));
    }

    assertThat(onDisk("quillfeather")).isFalse();
    assertThat(onDisk("thistledown")).isFalse();
    assertThat(onDisk("married")).isTrue();
    try (FormStore store = open(TODAY)) {
      assertThat(store.find(List.of(person, other)).current()).containsOnlyKeys(other);
    }
  }

  @Test
  void forgetting_from_a_file_that_is_damaged_or_none_of_forms_erases_all_of_it()
      throws IOException {
    try (FormStore store = open(TODAY)) {
      store.keep(forms(7, 300, "quillfeather"));
    }
    flip(100); // what kind of page the first is
    SqliteFormStore.forget(file(), forms(7, 1).keySet());
    assertThat(files()).isEmpty();

    Files.writeString(file(), "quillfeather");
    SqliteFormStore.forget(file(), forms(7, 1).keySet());
    assertThat(files()).isEmpty();
  }

  @Test
  void forgetting_makes_no_file() throws IOException {
    SqliteFormStore.forget(file(), forms(8, 1).keySet());

    assertThat(files()).isEmpty();
  }

  @Test
  void forgetting_is_refused_while_another_program_is_writing() throws SQLException {
    try (FormStore store = open(TODAY)) {
      store.keep(forms(9, 3));
    }
    try (Connection other = connection();
        Statement statement = other.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      assertThatThrownBy(() -> SqliteFormStore.forget(file(), forms(9, 1).keySet()))
          .isInstanceOf(VaultUnavailableException.class)
          .hasMessage(
              "The file of normal forms is in use by another program; repeat later: " + file());
    }
  }

  @Test
  void any_other_content_of_the_file_is_begun_anew_with_a_word() throws IOException {
    for (String content : List.of("", "name,phone\n", "name,phone\n".repeat(1000))) {
      Files.writeString(file(), content);
      assertBegunAnew();
    }
  }

  @Test
  void the_file_of_a_newer_program_is_begun_anew_with_a_word() throws SQLException {
    open(TODAY).close();
    change("PRAGMA user_version = 2");
    assertBegunAnew();
  }

  private void assertBegunAnew() {
    Map<ContactRef, byte[]> forms = forms(10, 30);
    try (FormStore store = open(TODAY)) {
      assertThat(store.find(forms.keySet()).current()).isEmpty();
      assertThat(store.troubles()).containsExactly(DAMAGED);
      store.keep(forms);
    }
    try (FormStore store = open(TODAY)) {
      assertKept(store, forms);
      assertThat(store.troubles()).isEmpty();
    }
  }

  @Test
  void a_form_that_was_changed_or_came_to_another_contact_is_noticed() throws SQLException {
    Map<ContactRef, byte[]> forms = forms(11, 4);
    try (FormStore store = open(TODAY)) {
      store.keep(forms);
    }
    change("UPDATE form SET form = x'0102' WHERE rowid = 1");
    change(
        "UPDATE form SET (form, checksum) = (SELECT form, checksum FROM form WHERE rowid = 3) WHERE rowid = 2");
    try (FormStore store = open(TODAY)) {
      assertThat(store.find(forms.keySet()).current()).hasSize(2);
      assertThat(store.troubles())
          .containsExactly(
              "Of the stored normal forms of contacts, 2 were damaged: they are made anew.");
    }
  }

  @Test
  void whatever_bit_flips_nothing_fails_and_nothing_false_is_found() throws IOException {
    Map<ContactRef, byte[]> forms = forms(12, 500);
    try (FormStore store = open(TODAY)) {
      store.keep(forms);
    }
    byte[] whole = Files.readAllBytes(file());
    long seed = 20261126;
    Random random = new Random(seed);
    int noticed = 0;
    for (int i = 0; i < 200; i++) {
      Files.write(file(), whole);
      int at = i < 100 ? i : random.nextInt(whole.length);
      flip(at);
      noticed += assertHarmless(forms, "seed %d, round %d, byte %d".formatted(seed, i, at));
    }
    assertThat(noticed).isGreaterThan(90);
  }

  /** What is found is what was kept; 1 when not all of it is found. */
  private int assertHarmless(Map<ContactRef, byte[]> forms, String where) {
    try (FormStore store = open(TODAY)) {
      FormStore.Kept kept = store.find(forms.keySet());
      kept.current().forEach((ref, bytes) -> assertThat(bytes).as(where).isEqualTo(forms.get(ref)));
      kept.outdated().forEach((ref, bytes) -> assertThat(forms).as(where).containsKey(ref));
      store.keep(forms);
      return kept.current().size() < forms.size() ? 1 : 0;
    }
  }

  @Test
  void a_file_that_can_t_be_written_keeps_nothing_and_says_so() throws IOException {
    Files.createDirectory(file());
    Files.createFile(file().resolve("in-the-way"));
    try (FormStore store = open(TODAY)) {
      store.keep(forms(13, 3));
      assertThat(store.find(forms(13, 3).keySet()).current()).isEmpty();
      assertThat(store.troubles()).hasSize(2).first().isEqualTo(DAMAGED);
      assertThat(store.troubles().get(1))
          .startsWith("Normal forms of contacts are not stored this time: ");
    }
  }

  private static void assertKept(FormStore store, Map<ContactRef, byte[]> forms) {
    FormStore.Kept kept = store.find(forms.keySet());
    assertEqual(kept.current(), forms);
    assertThat(kept.outdated()).isEmpty();
  }

  private static void assertEqual(Map<ContactRef, byte[]> found, Map<ContactRef, byte[]> expected) {
    assertThat(found).containsOnlyKeys(expected.keySet());
    expected.forEach((ref, bytes) -> assertThat(found.get(ref)).isEqualTo(bytes));
  }

  private SqliteFormStore open(String stamp) {
    return SqliteFormStore.open(file(), stamp);
  }

  private Path file() {
    return folder.resolve("normal-forms.db");
  }

  private void flip(int at) throws IOException {
    byte[] bytes = Files.readAllBytes(file());
    bytes[at] ^= (byte) (1 << at % 8);
    Files.write(file(), bytes);
  }

  private void change(String sql) throws SQLException {
    try (Connection connection = connection();
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private Connection connection() throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + file());
  }

  private List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.toList();
    }
  }

  private boolean onDisk(String text) throws IOException {
    for (Path each : files()) {
      if (Files.readString(each, StandardCharsets.ISO_8859_1).contains(text)) {
        return true;
      }
    }
    return false;
  }

  /** The first so many of a seed's references, each with some bytes of its own. */
  private static Map<ContactRef, byte[]> forms(long seed, int count) {
    return forms(seed, count, "form");
  }

  private static Map<ContactRef, byte[]> forms(long seed, int count, String word) {
    Random random = new Random(seed);
    Map<ContactRef, byte[]> forms = new HashMap<>();
    for (int i = 0; i < count; i++) {
      byte[] form = Arrays.copyOf(bytes(word + i + " of " + seed), 20 + i % 200);
      forms.put(reference(random), form);
    }
    return forms;
  }

  private static ContactRef reference(Random random) {
    return new ContactRef(1, random.nextLong(), random.nextLong());
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
