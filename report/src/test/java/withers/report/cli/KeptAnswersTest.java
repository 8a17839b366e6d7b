package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.TestInstance.Lifecycle.PER_CLASS;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import withers.codec.finding.CanonicalFindings;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.reconcile.cli.RunStore;
import withers.workspace.Workspace;

/** The demo's runs find the same whatever has become of the answers kept. */
@TestInstance(PER_CLASS)
@TestMethodOrder(OrderAnnotation.class)
@DisplayNameGeneration(ReplaceUnderscores.class)
class KeptAnswersTest {
  private static final Path HOME = Path.of("..").toAbsolutePath().normalize();

  private Path folder;
  private Path answers;
  private byte[] told;
  private String findings;

  @BeforeAll
  void runs_the_demo_once_with_nothing_kept(@TempDir Path place) throws IOException {
    folder = place.resolve("demo");
    CommandRun demo = CommandRun.at(HOME, "demo", "--workspace", folder.toString());
    assertThat(demo.code()).isZero();
    answers = workspace().paths().answers();
    Files.delete(answers);
    assertThat(reconcile().err()).isEmpty();
    findings = findings();
    told = Files.readAllBytes(answers);
  }

  @BeforeEach
  void puts_the_answers_back() throws IOException {
    Files.write(answers, told);
  }

  private Workspace workspace() {
    return Workspace.open(folder, Clock.fixed(CommandRun.NOW, ZoneOffset.UTC));
  }

  private CommandRun reconcile() {
    CommandRun run =
        CommandRun.of("reconcile", "--workspace", folder.toString(), "--as-of", "2026-10-01");
    assertThat(run.code()).isZero();
    return run;
  }

  private String findings() {
    return CanonicalFindings.of(
            new RunStore(folder.resolve("runs")).latest().orElseThrow().findings())
        .text();
  }

  @Test
  void with_all_answers_kept() throws IOException {
    assertThat(reconcile().err()).isEmpty();
    assertThat(findings()).isEqualTo(findings).isNotEmpty();
    assertThat(Files.readAllBytes(answers)).isEqualTo(told);
  }

  @Test
  void with_answers_that_are_damaged_cut_short_or_of_other_rules() throws IOException {
    byte[] changed = told.clone();
    changed[told.length / 2] ^= 1;
    byte[] ofOthers = told.clone();
    ofOthers[8] ^= 1;
    byte[] cut = Arrays.copyOf(told, told.length - 1);
    for (byte[] content : List.of(changed, ofOthers, cut, new byte[0])) {
      Files.write(answers, content);
      assertThat(reconcile().err()).isEmpty();
      assertThat(findings()).isEqualTo(findings);
      assertThat(Files.readAllBytes(answers)).hasSize(told.length);
    }
  }

  @Test
  void answers_hide_no_lost_contact() throws IOException, SQLException {
    Path vault = workspace().paths().contactVault();
    byte[] before = Files.readAllBytes(vault);
    try {
      try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + vault);
          Statement statement = connection.createStatement()) {
        statement.executeUpdate("DELETE FROM contact WHERE rowid % 10 = 0");
      }
      CommandRun run =
          CommandRun.of("reconcile", "--workspace", folder.toString(), "--as-of", "2026-10-01");
      assertThat(run.err()).contains("restore it from its backup");
    } finally {
      Files.write(vault, before);
    }
  }

  @Test
  @Order(Integer.MAX_VALUE) // what is forgotten stays so
  void they_are_deleted_when_anybody_is_forgotten() {
    try (ContactVault vault = workspace().openVault()) {
      AtomicReference<ContactRef> person = new AtomicReference<>();
      vault.visit((reference, contact) -> person.set(reference));
      vault.forget(List.of(person.get()), List.of());
      assertThat(vault.isForgotten(person.get())).isTrue();
    }
    assertThat(answers).doesNotExist();
    reconcile();
    assertThat(answers).exists();
  }
}
