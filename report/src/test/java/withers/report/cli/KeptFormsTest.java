package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.TestInstance.Lifecycle.PER_CLASS;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
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

/** The demo's runs find the same whatever has become of the normal forms and answers kept. */
@TestInstance(PER_CLASS)
@TestMethodOrder(OrderAnnotation.class)
@DisplayNameGeneration(ReplaceUnderscores.class)
class KeptFormsTest {
  private static final Path HOME = Path.of("..").toAbsolutePath().normalize();

  /** Two spellings of one contact may have one form; here the longest that one has alone. */
  private static final String ONLY_ONE_WITH_ITS_FORM =
      " FROM form GROUP BY form HAVING count(*) = 1 ORDER BY length(form) DESC, reference LIMIT 1 OFFSET %d";

  private Path folder;
  private Path kept;
  private Path answers;
  private byte[] whole;
  private String findings;
  private long contacts;

  @BeforeAll
  void runs_the_demo_once(@TempDir Path place) throws IOException, SQLException {
    folder = place.resolve("demo");
    CommandRun demo = CommandRun.at(HOME, "demo", "--workspace", folder.toString());
    assertThat(demo.code()).isZero();
    assertThat(demo.err()).doesNotContain("normal forms");
    kept = workspace().paths().normalForms();
    answers = workspace().paths().answers();
    whole = Files.readAllBytes(kept);
    contacts = number("SELECT count(*) FROM form");
    assertThat(contacts).isGreaterThan(100);
    Files.delete(kept);
    Files.delete(answers);
    assertThat(reconcile().err()).isEmpty();
    findings = findings();
  }

  @BeforeEach
  void puts_the_forms_back_without_answers() throws IOException {
    Files.write(kept, whole);
    Files.deleteIfExists(answers);
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
  void with_all_forms_kept() throws SQLException {
    assertThat(reconcile().err()).isEmpty();
    assertThat(findings()).isEqualTo(findings).isNotEmpty();
    assertThat(number("SELECT count(*) FROM form")).isEqualTo(contacts);
  }

  @Test
  void with_answers_kept_that_spare_the_forms() throws IOException {
    reconcile();
    byte[] told = Files.readAllBytes(answers);
    Files.delete(kept);
    assertThat(reconcile().err()).isEmpty();
    assertThat(findings()).isEqualTo(findings);
    assertThat(Files.size(kept)).isLessThan(whole.length);
    assertThat(Files.readAllBytes(answers)).isEqualTo(told);
  }

  @Test
  void with_answers_that_are_damaged_cut_short_or_of_other_rules() throws IOException {
    reconcile();
    byte[] told = Files.readAllBytes(answers);
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
    reconcile();
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
  void with_forms_by_other_rules_which_are_made_anew_and_compared() throws SQLException {
    change("UPDATE maker SET stamp = 'of another program'");
    assertThat(reconcile().err())
        .isEqualTo(
            "Contacts are read by other rules than before: %,d normal forms were made anew, and 0 of them changed.\n"
                .formatted(contacts));
    assertThat(findings()).isEqualTo(findings);
    assertThat(reconcile().err()).isEmpty();
  }

  @Test
  void with_damaged_forms_and_with_a_damaged_file() throws SQLException, IOException {
    change("UPDATE form SET form = zeroblob(9) WHERE rowid < 4");
    assertThat(reconcile().err())
        .isEqualTo("Of the stored normal forms of contacts, 3 were damaged: they are made anew.\n");
    assertThat(findings()).isEqualTo(findings);

    byte[] damaged = whole.clone();
    for (int i = 0; i < damaged.length; i += 997) {
      damaged[i] ^= 0x55;
    }
    for (byte[] content : List.of(damaged, "no forms at all".getBytes(StandardCharsets.UTF_8))) {
      Files.write(kept, content);
      assertThat(reconcile().err())
          .isEqualTo("The stored normal forms of contacts are damaged: they are made anew.\n");
      assertThat(findings()).isEqualTo(findings);
    }
    assertThat(reconcile().err()).isEmpty();
  }

  @Test
  @Order(Integer.MAX_VALUE) // what is forgotten stays so
  void nothing_of_a_forgotten_contact_stays_among_them() throws IOException, SQLException {
    byte[] reference = bytes("SELECT reference" + ONLY_ONE_WITH_ITS_FORM.formatted(0));
    byte[] form = bytes("SELECT form" + ONLY_ONE_WITH_ITS_FORM.formatted(0));
    byte[] another = bytes("SELECT form" + ONLY_ONE_WITH_ITS_FORM.formatted(1));
    assertThat(isOnDisk(form)).isTrue();
    reconcile();
    assertThat(answers).exists();

    ByteBuffer in = ByteBuffer.wrap(reference);
    ContactRef person = new ContactRef(in.get(), in.getLong(), in.getLong());
    try (ContactVault vault = workspace().openVault()) {
      vault.forget(List.of(person), List.of());
      assertThat(vault.isForgotten(person)).isTrue();
    }

    assertThat(answers).doesNotExist();
    assertThat(isOnDisk(form)).isFalse();
    assertThat(isOnDisk(another)).isTrue();
    assertThat(number("SELECT count(*) FROM form")).isEqualTo(contacts - 1);
    reconcile();
    assertThat(isOnDisk(form)).isFalse();
  }

  private boolean isOnDisk(byte[] form) throws IOException {
    String wanted = new String(form, StandardCharsets.ISO_8859_1);
    try (Stream<Path> files = Files.list(kept.getParent())) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        if (Files.readString(file, StandardCharsets.ISO_8859_1).contains(wanted)) {
          return true;
        }
      }
      return false;
    }
  }

  private byte[] bytes(String query) throws SQLException {
    try (Connection connection = connection();
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(query)) {
      return row.getBytes(1);
    }
  }

  private long number(String query) throws SQLException {
    try (Connection connection = connection();
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(query)) {
      return row.getLong(1);
    }
  }

  private void change(String sql) throws SQLException {
    try (Connection connection = connection();
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  private Connection connection() throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + kept);
  }
}
