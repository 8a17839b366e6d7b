package withers.contacts;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contact.FormStore;
import withers.contact.MemoryContactVault;
import withers.contact.RandomContacts;
import withers.contact.VaultKey;
import withers.contact.sqlite.SqliteFormStore;
import withers.corpus.Corpus;
import withers.corpus.Mix;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.matching.form.FormedContact;
import withers.matching.form.NormalForms;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FormProjectionTest {
  private static final String TODAY = "today";

  @TempDir private Path folder;
  private final ContactVault vault =
      new MemoryContactVault(new VaultKey(1, new byte[VaultKey.LENGTH]));
  private final NormalForms american = new NormalForms("US");
  private List<ContactRef> all = List.of();
  private Map<ContactRef, FormedContact> anew = Map.of();

  @BeforeEach
  void contacts() {
    List<Contact> contacts =
        Stream.concat(
                new RandomContacts(30).contacts(300).stream(),
                new Corpus(Mix.TUNING).pairs(300).map(pair -> pair.other()))
            .toList();
    vault.store(
        contacts.stream()
            .map(one -> new ContactVault.Deposit(one, new SourceId("clinic"), new RecordKey("P-1")))
            .toList());
    all = contacts.stream().map(vault::reference).distinct().toList();
    anew = FormFinder.anew(vault::findAll, american).find(all);
  }

  /** What a run does: finds some, then some of them again, and keeps what it made. */
  private long[] assertFoundAsAnew(String stamp) {
    try (FormStore store = SqliteFormStore.open(file(), stamp);
        FormProjection projection = new FormProjection(() -> vault, store, new NormalForms("US"))) {
      assertThat(projection.find(all.subList(0, 100))).hasSize(100);
      assertThat(projection.find(all)).isEqualTo(anew);
      return new long[] {projection.remade(), projection.changed()};
    }
  }

  private Path file() {
    return folder.resolve("normal-forms.db");
  }

  @Test
  void finds_the_same_with_nothing_kept_and_with_everything_kept() {
    assertFoundAsAnew(TODAY);
    assertThat(kept()).isEqualTo(all.size());
    assertThat(assertFoundAsAnew(TODAY)).containsExactly(0, 0);
  }

  private int kept() {
    try (FormStore store = SqliteFormStore.open(file(), TODAY)) {
      return store.find(all).current().size();
    }
  }

  @Test
  void forms_by_other_rules_are_made_anew_and_the_changed_ones_counted() {
    NormalForms british = new NormalForms("GB");
    try (FormStore store = SqliteFormStore.open(file(), "yesterday");
        FormProjection projection = new FormProjection(() -> vault, store, british)) {
      projection.find(all);
    }
    Map<ContactRef, FormedContact> before = FormFinder.anew(vault::findAll, british).find(all);
    long differing = all.stream().filter(one -> !before.get(one).equals(anew.get(one))).count();
    assertThat(differing).isBetween(1L, all.size() - 1L);

    assertThat(assertFoundAsAnew(TODAY)).containsExactly(all.size(), differing);
    assertThat(assertFoundAsAnew(TODAY)).containsExactly(0, 0);
  }

  @Test
  void damage_anywhere_changes_nothing_that_is_found() throws IOException {
    assertFoundAsAnew(TODAY);
    byte[] whole = Files.readAllBytes(file());
    long seed = 31;
    Random random = new Random(seed);
    for (int round = 0; round < 20; round++) {
      byte[] damaged = whole.clone();
      for (int i = 0; i < 40; i++) {
        damaged[random.nextInt(damaged.length)] ^= (byte) (1 << random.nextInt(8));
      }
      Files.write(file(), damaged);
      assertFoundAsAnew(TODAY);
    }
  }

  @Test
  void a_contact_that_the_vault_does_not_hold_is_not_found_although_its_form_is_kept() {
    assertFoundAsAnew(TODAY);
    vault.forget(all.subList(0, 1), List.of());
    try (FormStore store = SqliteFormStore.open(file(), TODAY);
        FormProjection projection = new FormProjection(() -> vault, store, american)) {
      assertThat(projection.find(all)).containsOnlyKeys(all.subList(1, all.size()));
    }
  }

  @Test
  void all_threads_find_the_same() {
    try (FormStore store = SqliteFormStore.open(file(), TODAY);
        FormProjection projection = new FormProjection(() -> vault, store, american)) {
      assertThat(
              Stream.iterate(0, from -> from < 32, from -> from + 1)
                  .parallel()
                  .map(from -> projection.find(all.subList(from, all.size()))))
          .allMatch(found -> anew.entrySet().containsAll(found.entrySet()));
    }
    assertThat(kept()).isEqualTo(all.size());
  }
}
