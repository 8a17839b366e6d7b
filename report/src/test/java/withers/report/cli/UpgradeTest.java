package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.cli.Console;
import withers.cli.Environment;
import withers.cli.ExitCode;
import withers.cli.Operator;
import withers.point.Point;
import withers.report.demo.Home;
import withers.testing.AnotherJava;
import withers.testing.KillableJava;
import withers.workspace.Workspace;
import withers.workspace.WorkspaceLock;

/** A small network's workspace whose vault an older program wrote meets this one. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class UpgradeTest {
  private static final LocalDate SEPTEMBER = LocalDate.of(2026, 9, 30);
  private static final LocalDate OCTOBER = LocalDate.of(2026, 10, 31);
  private static final String BACKUP = "backups/2026-10-31-before-contact-vault-format-2";
  private static final String SAID =
      "withers: An older Withers wrote this workspace. Taking a backup in %s, then bringing the contact vault from format 1 to 2.\n";

  @TempDir private Path place;
  private Path folder;
  private String found;

  @BeforeEach
  void an_older_program_has_worked_here() throws IOException, SQLException {
    folder = place.resolve("network");
    SmallNetwork network = SmallNetwork.in(folder, 1);
    network.rehomes();
    network.export(SEPTEMBER);
    assertThat(run(folder, "run").code()).isZero();
    found = network.findings();
    assertThat(found).contains("contact-behind");
    OlderVault.in(folder);
    assertThat(OlderVault.format(vault(folder))).isEqualTo(1);
    assertThat(OlderVault.contacts(vault(folder))).isEqualTo(2);
  }

  private static Path vault(Path workspace) {
    return workspace.resolve("log/contacts.db");
  }

  private static CommandRun run(Path workspace, String command, String... more) {
    return SmallNetwork.of(workspace).run(OCTOBER, command, more);
  }

  private void assertWhole(Path workspace) throws SQLException {
    assertThat(OlderVault.format(vault(workspace))).isEqualTo(2);
    CommandRun verified = run(workspace, "verify");
    assertThat(verified.code()).as(verified.toString()).isZero();
    assertThat(verified.err()).doesNotContain("backup");
    assertThat(run(workspace, "reconcile").code()).isZero();
    assertThat(SmallNetwork.of(workspace).findings()).isEqualTo(found);
  }

  private List<String> backups() throws IOException {
    if (!Files.exists(folder.resolve("backups"))) {
      return List.of();
    }
    try (Stream<Path> backups = Files.list(folder.resolve("backups"))) {
      return backups.map(one -> folder.relativize(one).toString()).sorted().toList();
    }
  }

  @Test
  void a_backup_is_taken_first_and_said() throws IOException, SQLException {
    CommandRun reconciled = run(folder, "reconcile");

    assertThat(reconciled.code()).as(reconciled.toString()).isZero();
    assertThat(reconciled.err()).startsWith(SAID.formatted(BACKUP));
    assertThat(backups()).containsExactly(BACKUP);
    Path kept = vault(folder.resolve(BACKUP));
    assertThat(OlderVault.format(kept)).isEqualTo(1);
    assertThat(OlderVault.contacts(kept)).isEqualTo(2);
    assertThat(folder.resolve(BACKUP).resolve("inbox")).doesNotExist();
    assertWhole(folder);
    assertThat(backups()).containsExactly(BACKUP);
  }

  @Test
  void a_command_that_only_reads_brings_it_up_too_but_not_while_another_writes()
      throws IOException, SQLException {
    byte[] before = Files.readAllBytes(vault(folder));
    Process writing = AnotherJava.running(Holding.class, folder.toString());
    assertThat(writing.getInputStream().read()).isEqualTo('h');
    CommandRun refused = run(folder, "verify");
    assertThat(refused.code()).as(refused.toString()).isEqualTo(ExitCode.BUSY.number());
    writing.destroyForcibly().onExit().join();
    assertThat(Files.readAllBytes(vault(folder))).isEqualTo(before);
    assertThat(backups()).isEmpty();
    CommandRun verified = run(folder, "verify");
    assertThat(verified.code()).as(verified.toString()).isZero();
    assertThat(verified.err()).startsWith(SAID.formatted(BACKUP));
    assertWhole(folder);
  }

  @Test
  void what_opens_no_store_changes_none() throws IOException, SQLException {
    CommandRun checked = CommandRun.on(OCTOBER, "config", "check", "-w", folder.toString());
    assertThat(checked.code()).as(checked.toString()).isZero();
    assertThat(OlderVault.format(vault(folder))).isEqualTo(1);
    assertThat(backups()).isEmpty();
  }

  @Test
  void killed_between_backup_and_new_format_it_begins_again_and_writes_over_nothing()
      throws Exception {
    KillableJava process =
        KillableJava.start(Upgrading.class, folder.toString(), OCTOBER.toString());
    assertThat(process.comesTo(Point.UPGRADE_BACKED_UP)).isTrue();
    process.kill();
    assertThat(OlderVault.format(vault(folder))).isEqualTo(1);
    assertThat(backups()).containsExactly(BACKUP);
    String manifest = Files.readString(folder.resolve(BACKUP).resolve("manifest.sha256"));

    CommandRun again = run(folder, "reconcile");
    assertThat(again.code()).as(again.toString()).isZero();
    assertThat(again.err()).startsWith(SAID.formatted(BACKUP + "-2"));
    assertThat(backups()).containsExactly(BACKUP, BACKUP + "-2");
    assertThat(folder.resolve(BACKUP).resolve("manifest.sha256")).hasContent(manifest);
    assertWhole(folder);
  }

  @Test
  void without_a_backup_nothing_is_changed() throws IOException, SQLException {
    byte[] before = Files.readAllBytes(vault(folder));
    Files.writeString(folder.resolve("backups"), "a file where the folder should be");
    CommandRun refused = run(folder, "reconcile");

    assertThat(refused.code()).as(refused.toString()).isEqualTo(ExitCode.STORAGE.number());
    assertThat(refused.err())
        .contains(
            "withers: Expected to take a backup in " + BACKUP,
            "but could not",
            "nothing was changed");
    assertThat(Files.readAllBytes(vault(folder))).isEqualTo(before);
    Files.delete(folder.resolve("backups"));
    assertThat(run(folder, "reconcile").code()).isZero();
    assertWhole(folder);
  }

  @Test
  void the_backup_is_brought_back_as_the_older_program_knows_it_or_as_this_one_does()
      throws SQLException {
    assertThat(run(folder, "reconcile").code()).isZero();
    Path older = place.resolve("older");
    CommandRun restored =
        CommandRun.on(
            OCTOBER,
            "restore",
            folder.resolve(BACKUP).toString(),
            older.toString(),
            "--no-erasures");
    assertThat(restored.code()).as(restored.toString()).isZero();
    assertThat(OlderVault.format(vault(older))).isEqualTo(1);
    assertThat(run(older, "reconcile").code()).isZero();
    assertWhole(older);
  }

  @Test
  void an_older_workspace_tells_what_it_has_forgotten() throws IOException, SQLException {
    Path backup = place.resolve("backup");
    assertThat(run(folder, "backup", backup.toString()).err()).startsWith(SAID.formatted(BACKUP));
    OlderVault.in(folder);
    Path again = place.resolve("again");
    CommandRun restored =
        CommandRun.on(
            OCTOBER,
            "restore",
            backup.toString(),
            again.toString(),
            "--erasures",
            folder.toString());
    assertThat(restored.code()).as(restored.toString()).isZero();
    assertThat(restored.err()).startsWith(SAID.formatted(BACKUP + "-2"));
    assertThat(run(again, "reconcile").code()).isZero();
    assertWhole(again);
  }

  @Test
  void who_is_forgotten_is_in_no_such_backup_either() throws IOException {
    assertThat(run(folder, "reconcile").code()).isZero();
    SmallNetwork.of(folder).forget(OCTOBER, "Bo Brandt", "212 555 0102");

    assertThat(folder.resolve("backups")).doesNotExist();
  }

  /** Holds the right to write until it is killed. */
  static final class Holding {
    private Holding() {}

    public static void main(String... args) throws IOException {
      Workspace workspace =
          Workspace.open(Path.of(args[0]), Clock.fixed(Instant.EPOCH, ZoneOffset.UTC));
      try (WorkspaceLock lock = workspace.lock("ingest")) {
        System.out.print(lock.isHeld() ? "h" : "-");
        System.out.flush();
        System.in.read();
      }
    }
  }

  /** Reconciles, and waits between backup and new format. */
  static final class Upgrading {
    private Upgrading() {}

    public static void main(String... args) {
      PrintStream nowhere =
          new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8);
      new Application(
              new Console(nowhere, nowhere, false),
              Clock.fixed(CommandRun.hour(LocalDate.parse(args[1])), ZoneOffset.UTC),
              new Environment(Map.of()),
              new Home(Optional.empty()),
              Operator.NOBODY,
              time -> {},
              KillableJava.waitingAt(Point.UPGRADE_BACKED_UP.name()))
          .execute("reconcile", "--workspace", args[0]);
    }
  }
}
