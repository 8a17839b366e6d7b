package withers.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contact.VaultUnavailableException;
import withers.id.ImportId;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.Tally;
import withers.source.Extent;

/** People are invented. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class StoresTest {
  private static final Instant NOW = Instant.parse("2031-03-01T12:00:00Z");
  private static final SourceId SOURCE = new SourceId("harbour");
  private static final Contact KIM =
      new Contact("Kim Quokka", "", "", List.of("555-0101"), List.of(), List.of(), "", "", "", "");

  @TempDir private Path folder;
  private Workspace workspace;

  @BeforeEach
  void make() {
    Workspace.create(
        folder,
        new NewWorkspace("Coast", ZoneId.of("Europe/Lisbon"), "ZZ", "en", TestNumbers.REFUSED));
    workspace = Workspace.open(folder, Clock.fixed(NOW, ZoneOffset.UTC));
  }

  @Test
  void a_vault_keeps_its_key_from_one_opening_to_the_next() {
    ContactRef reference;
    try (ContactVault vault = workspace.openVault()) {
      vault.store(List.of(new ContactVault.Deposit(KIM, SOURCE, new RecordKey("1"))));
      reference = vault.reference(KIM);
    }

    try (ContactVault vault = workspace.openVault()) {
      assertThat(vault.find(reference)).contains(KIM);
      assertThat(vault.reference(KIM)).isEqualTo(reference);
    }
  }

  @Test
  void a_log_keeps_what_was_committed() {
    commit();

    try (EventLog log = workspace.openLog()) {
      assertThat(log.snapshot().markers()).hasSize(1);
    }
  }

  @Test
  void log_vault_and_key_are_their_owners_only() throws IOException {
    workspace.openVault().close();
    commit();

    for (String file : List.of("events.db", "contacts.db", "vault.key")) {
      Path path = folder.resolve("log").resolve(file);
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(path)))
          .as(file)
          .isEqualTo("rw-------");
    }
  }

  @Test
  void a_key_that_was_lost_beside_its_contacts_is_not_replaced() throws IOException {
    workspace.openVault().close();
    Files.delete(workspace.paths().vaultKey());

    assertNoNewKey();
  }

  @Test
  void a_key_that_was_lost_beside_events_is_not_replaced() throws IOException {
    workspace.openVault().close();
    commit();
    Files.delete(workspace.paths().vaultKey());
    Files.delete(workspace.paths().contactVault());

    assertNoNewKey();
  }

  @Test
  void a_log_that_is_still_empty_needs_no_old_key() {
    workspace.openLog().close();

    workspace.openVault().close();

    assertThat(workspace.paths().vaultKey()).exists();
  }

  @Test
  void whoever_may_write_finds_a_key_even_if_events_come_before_contacts() {
    workspace.whileLocked(
        "ingest",
        () -> {
          commit();
          return workspace;
        });

    try (ContactVault vault = workspace.openVault()) {
      assertThat(vault.size()).isZero();
    }
  }

  private void assertNoNewKey() {
    assertThatThrownBy(workspace::openVault)
        .isInstanceOf(VaultUnavailableException.class)
        .hasMessage(
            "Expected the vault key, but found no file; restore it from its backup: "
                + workspace.paths().vaultKey());
    assertThat(workspace.paths().vaultKey()).doesNotExist();
  }

  private void commit() {
    try (EventLog log = workspace.openLog()) {
      log.commit(
          new ImportMarker(
              new ImportId(new UUID(1, 2)),
              Optional.empty(),
              SOURCE,
              Optional.empty(),
              LocalDate.of(2031, 3, 1),
              new Extent.Full(),
              List.of(),
              Tally.NOTHING,
              new TreeSet<>(),
              new TreeSet<>(),
              NOW));
    }
  }
}
