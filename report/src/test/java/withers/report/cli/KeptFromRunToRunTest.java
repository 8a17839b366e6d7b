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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.UnaryOperator;
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

/**
 * The demo's runs find the same whatever has become of what is kept from run to run: answers about
 * contacts, and which animals were clear.
 */
@TestInstance(PER_CLASS)
@TestMethodOrder(OrderAnnotation.class)
@DisplayNameGeneration(ReplaceUnderscores.class)
class KeptFromRunToRunTest {
  private static final Path HOME = Path.of("..").toAbsolutePath().normalize();

  private Path folder;
  private final Map<Path, byte[]> kept = new LinkedHashMap<>();
  private String findings;

  @BeforeAll
  void runs_the_demo_once_with_nothing_kept(@TempDir Path place) throws IOException {
    folder = place.resolve("demo");
    CommandRun demo = CommandRun.at(HOME, "demo", "--workspace", folder.toString());
    assertThat(demo.code()).isZero();
    List<Path> files = List.of(workspace().paths().answers(), workspace().paths().clearAnimals());
    for (Path file : files) {
      Files.delete(file);
    }
    assertThat(reconcile().err()).isEmpty();
    findings = findings();
    for (Path file : files) {
      kept.put(file, Files.readAllBytes(file));
    }
  }

  @BeforeEach
  void puts_all_back() throws IOException {
    for (Map.Entry<Path, byte[]> file : kept.entrySet()) {
      Files.write(file.getKey(), file.getValue());
    }
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
  void with_all_kept() throws IOException {
    assertThat(reconcile().err()).isEmpty();
    assertThat(findings()).isEqualTo(findings).isNotEmpty();
    for (Map.Entry<Path, byte[]> file : kept.entrySet()) {
      assertThat(Files.readAllBytes(file.getKey())).isEqualTo(file.getValue());
    }
  }

  @Test
  void with_files_that_are_damaged_cut_short_or_of_other_rules() throws IOException {
    List<UnaryOperator<byte[]>> harms =
        List.of(
            told -> flipped(told, told.length / 2),
            told -> flipped(told, 8),
            told -> Arrays.copyOf(told, told.length - 1),
            told -> new byte[0]);
    for (UnaryOperator<byte[]> harm : harms) {
      for (Map.Entry<Path, byte[]> file : kept.entrySet()) {
        Files.write(file.getKey(), harm.apply(file.getValue()));
      }
      assertThat(reconcile().err()).isEmpty();
      assertThat(findings()).isEqualTo(findings);
      for (Map.Entry<Path, byte[]> file : kept.entrySet()) {
        assertThat(Files.readAllBytes(file.getKey())).hasSameSizeAs(file.getValue());
      }
    }
  }

  private static byte[] flipped(byte[] told, int at) {
    byte[] changed = told.clone();
    changed[at] ^= 1;
    return changed;
  }

  @Test
  void nothing_kept_hides_a_lost_contact() throws IOException, SQLException {
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
    assertThat(kept.keySet()).allSatisfy(file -> assertThat(file).doesNotExist());
    reconcile();
    assertThat(kept.keySet()).allSatisfy(file -> assertThat(file).exists());
  }
}
