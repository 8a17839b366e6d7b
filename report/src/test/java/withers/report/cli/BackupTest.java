package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.cli.ExitCode;

/** A small network's workspace is backed up while it is used, brought back, examined, damaged. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class BackupTest {
  private static final LocalDate SEPTEMBER = LocalDate.of(2026, 9, 30);
  private static final LocalDate OCTOBER = LocalDate.of(2026, 10, 31);
  private static final int NO_SERVER = 1;

  @TempDir private Path place;
  private SmallNetwork network;
  private Path folder;

  @BeforeEach
  void ingests_a_month() throws IOException {
    folder = place.resolve("network");
    network = SmallNetwork.in(folder, NO_SERVER);
    network.rehomes();
    network.visits();
    network.export(SEPTEMBER);
    assertThat(run(SEPTEMBER, folder, "run").code()).isZero();
    assertThat(findings(folder)).contains("contact-behind");
  }

  private static CommandRun run(LocalDate day, Path network, String command, String... more) {
    return SmallNetwork.of(network).run(day, command, more);
  }

  private Path backup() {
    Path backup = place.resolve("backup");
    CommandRun run = run(OCTOBER, folder, "backup", backup.toString());
    assertThat(run.code()).as(run.toString()).isZero();
    return backup;
  }

  private CommandRun restore(Path backup, Path to, String... more) {
    String[] args =
        Stream.concat(Stream.of("restore", backup.toString(), to.toString()), Stream.of(more))
            .toArray(String[]::new);
    return CommandRun.on(OCTOBER, args);
  }

  private static String findings(Path network) {
    return SmallNetwork.of(network).findings();
  }

  @Test
  void what_is_brought_back_is_sound_and_finds_the_same() {
    Path again = place.resolve("again");
    CommandRun restored = restore(backup(), again, "--no-erasures");
    assertThat(restored.code()).as(restored.toString()).isZero();
    CommandRun verified = run(OCTOBER, again, "verify");
    assertThat(verified.code()).as(verified.toString()).isZero();
    assertThat(verified.out()).matches("Sound: \\d+ events on the log, 2 contacts in the vault.\n");
    assertThat(run(SEPTEMBER, again, "reconcile").code()).isZero();
    assertThat(findings(again)).isEqualTo(findings(folder));
    assertThat(again.resolve("lists")).isEmptyDirectory();
    CommandRun reported = run(SEPTEMBER, again, "report");
    assertThat(reported.code()).as(reported.toString()).isZero();
    assertThat(again.resolve("lists")).isNotEmptyDirectory();
  }

  @Test
  void backups_that_are_taken_during_an_import_are_sound() throws IOException {
    network.state(
        SmallNetwork.Export.PATIENTS,
        IntStream.range(0, 4_000)
            .mapToObj(
                i ->
                    "Q%d, 999010000%06d, , 2026-10-01, , Cy Marsh %d, 212 555 %04d"
                        .formatted(i, 1000 + i, i, i))
            .collect(Collectors.joining("\n")));
    network.export(OCTOBER);
    CompletableFuture<CommandRun> importing =
        CompletableFuture.supplyAsync(
            () -> run(OCTOBER, folder, "ingest", "--settled"),
            task -> new Thread(task).start()); // an import needs the common pool itself
    List<Path> backups = new ArrayList<>();
    while (!importing.isDone() || backups.isEmpty()) {
      Path backup = place.resolve("backup-" + backups.size());
      CommandRun taken = run(OCTOBER, folder, "backup", backup.toString());
      assertThat(taken.code()).as(taken.toString()).isZero();
      backups.add(backup);
    }
    assertThat(importing.join().code()).as(importing.join().toString()).isZero();
    for (Path backup : List.of(backups.get(0), backups.get(backups.size() - 1))) {
      Path again = place.resolve("again-" + backup.getFileName());
      assertThat(restore(backup, again, "--no-erasures").code()).isZero();
      CommandRun verified = run(OCTOBER, again, "verify");
      assertThat(verified.code()).as(verified.toString()).isZero();
    }
  }

  @Test
  void who_was_forgotten_since_is_forgotten_again() throws IOException {
    Path backup = backup();
    network.forget(OCTOBER, "Bo Brandt", "212 555 0102");
    Path list = place.resolve("erasures.txt");
    assertThat(run(OCTOBER, folder, "backup", "--only-erasures", list.toString()).code()).isZero();
    assertThat(Files.readString(list))
        .containsPattern("reference 01:[0-9a-f]{32}\n")
        .contains("record tideline T1\n", "record stays S1\n")
        .doesNotContain("Brandt");
    for (Path since : List.of(folder, list)) {
      Path again = place.resolve("again-by-" + since.getFileName());
      CommandRun restored = restore(backup, again, "--erasures", since.toString());
      assertThat(restored.out()).contains("Forgotten again: 1 contacts and 2 records.");
      assertThat(holds(again.resolve("log"), "Brandt")).isFalse();
      assertThat(holds(again.resolve("log"), "Stone")).isTrue();
      assertThat(run(OCTOBER, again, "verify").code()).isZero();
    }
  }

  private static boolean holds(Path at, String word) throws IOException {
    try (Stream<Path> files = Files.walk(at)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        if (Files.readString(file, StandardCharsets.ISO_8859_1).contains(word)) {
          return true;
        }
      }
      return false;
    }
  }

  @Test
  void a_backup_that_is_not_as_it_was_taken_is_not_brought_back() throws IOException {
    Path backup = backup();
    Path vault = backup.resolve("log/contacts.db");
    byte[] bytes = Files.readAllBytes(vault);
    bytes[bytes.length / 2] ^= 1;
    Files.write(vault, bytes);
    Files.delete(backup.resolve("organisations.yaml"));
    Files.writeString(backup.resolve("more.txt"), "more");
    CommandRun refused = restore(backup, place.resolve("again"), "--no-erasures");
    assertThat(refused.code()).isEqualTo(ExitCode.STORAGE.number());
    assertThat(refused.err())
        .contains(
            "found 3 differences",
            "changed since it was taken: log/contacts.db",
            "not of this backup: more.txt",
            "missing: organisations.yaml");
    assertThat(place.resolve("again")).doesNotExist();
  }

  @Test
  void nothing_is_written_over_and_the_erasures_must_be_told() throws IOException {
    Path backup = backup();
    CommandRun over = restore(backup, folder, "--no-erasures");
    assertThat(over.code()).isEqualTo(ExitCode.STORAGE.number());
    assertThat(over.err()).contains("Expected a new or empty folder");
    assertThat(run(OCTOBER, folder, "backup", backup.toString()).code())
        .isEqualTo(ExitCode.STORAGE.number());
    assertThat(run(OCTOBER, folder, "backup", folder.resolve("inside").toString()).err())
        .contains("Expected a folder outside the workspace");
    assertThat(restore(backup, place.resolve("again")).code()).isEqualTo(ExitCode.USAGE.number());
    assertThat(place.resolve("again")).doesNotExist();
    assertThat(
            restore(
                    Files.createDirectory(place.resolve("empty")),
                    place.resolve("x"),
                    "--no-erasures")
                .err())
        .contains("Expected a backup with a manifest.sha256, but found none");
  }

  @Test
  void damage_to_the_log_and_the_vault_is_found() throws IOException, SQLException {
    assertDamage("events.db", "UPDATE chunk SET body = zeroblob(length(body))", "damaged");
    assertDamage(
        "contacts.db",
        "DELETE FROM contact WHERE rowid = 1",
        "Expected the vault to hold the contacts that the log refers to, but found 1 missing");
    assertDamage(
        "contacts.db",
        "UPDATE contact SET fields = x'010100000002426f' WHERE rowid = 1",
        "is not as it was written");
  }

  private void assertDamage(String file, String sql, String told) throws IOException, SQLException {
    Path database = folder.resolve("log").resolve(file);
    byte[] whole = Files.readAllBytes(database);
    change(database, sql);
    CommandRun verified = run(OCTOBER, folder, "verify");
    assertThat(verified.code()).as(verified.toString()).isEqualTo(ExitCode.STORAGE.number());
    assertThat(verified.err()).contains(told, "restore a backup").doesNotContain("Brandt", "Stone");
    Files.write(database, whole);
    assertThat(run(OCTOBER, folder, "verify").code()).isZero();
  }

  private static void change(Path database, String sql) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
        Statement statement = connection.createStatement()) {
      assertThat(statement.executeUpdate(sql)).isPositive();
      statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
    }
  }

  @Test
  void what_can_be_made_again_is_thrown_away_when_damaged() throws IOException {
    String before = findings(folder);
    Path told;
    try (Stream<Path> runs = Files.walk(folder.resolve("runs"))) {
      told = runs.filter(path -> path.endsWith("run.json")).findFirst().orElseThrow();
    }
    Files.writeString(told, "no run at all");
    CommandRun found = run(OCTOBER, folder, "verify");
    assertThat(found.code()).isEqualTo(ExitCode.ATTENTION.number());
    assertThat(found.err()).contains("run.json", "--repair");
    assertThat(run(OCTOBER, folder, "verify", "--repair").code())
        .isEqualTo(ExitCode.ATTENTION.number());
    assertThat(told).doesNotExist();
    assertThat(run(SEPTEMBER, folder, "reconcile").code()).isZero();
    assertThat(findings(folder)).isEqualTo(before);
    assertThat(run(OCTOBER, folder, "verify").code()).isZero();
  }

  @Test
  void a_vault_from_before_an_erasure_is_told_again_by_the_log() throws IOException {
    Path vault = folder.resolve("log/contacts.db");
    byte[] before = Files.readAllBytes(vault);
    network.forget(OCTOBER, "Bo Brandt", "212 555 0102");
    assertThat(run(OCTOBER, folder, "verify").code()).isZero();
    Files.write(vault, before);
    CommandRun found = run(OCTOBER, folder, "verify", "--repair");
    assertThat(found.code()).isEqualTo(ExitCode.ATTENTION.number());
    assertThat(found.err())
        .contains("Expected that 1 contacts, which were forgotten, are kept out");
    assertThat(holds(folder.resolve("log"), "Brandt")).isFalse();
    assertThat(run(OCTOBER, folder, "verify").code()).isZero();
  }
}
