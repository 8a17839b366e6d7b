package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.cli.ExitCode;
import withers.reconcile.cli.RunStore;

/**
 * A full disk, a folder that can't be written, a clock that was set back, a newer program's files:
 * one clear sentence each, and nothing is lost. A disk of its own needs the right to mount one in
 * memory; without it the tests that do are skipped.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class MishapTest {
  private static final LocalDate SEPTEMBER = LocalDate.of(2026, 9, 30);
  private static final LocalDate OCTOBER = LocalDate.of(2026, 10, 31);
  private static final LocalDate LONG_AGO = LocalDate.of(2001, 1, 1);

  @TempDir private Path place;
  private boolean isMounted;

  @AfterEach
  void unmounts() throws IOException, InterruptedException {
    if (isMounted) {
      // Lazily: what was mapped into memory is let go by the garbage collector, some time.
      assertThat(does("umount", "--lazy", disk().toString())).isTrue();
    }
  }

  private Path disk() {
    return place.resolve("disk");
  }

  private SmallNetwork onDisk(int mebibytes) throws IOException, InterruptedException {
    Files.createDirectory(disk());
    isMounted =
        does("mount", "-t", "tmpfs", "-o", "size=" + mebibytes + "m", "tmpfs", disk().toString());
    assumeTrue(isMounted, "a file system in memory can't be mounted here");
    return network(disk().resolve("network"));
  }

  private static boolean does(String... words) throws IOException, InterruptedException {
    try {
      return new ProcessBuilder(words).redirectErrorStream(true).start().waitFor() == 0;
    } catch (IOException noSuchProgram) {
      return false;
    }
  }

  private static SmallNetwork network(Path folder) throws IOException {
    SmallNetwork network = SmallNetwork.in(folder, 1);
    network.rehomes();
    network.export(SEPTEMBER);
    assertThat(network.run(SEPTEMBER, "run").code()).isZero();
    return network;
  }

  private static void assertSound(SmallNetwork network) {
    CommandRun verified = network.run(OCTOBER, "verify");
    assertThat(verified.code()).as(verified.toString()).isZero();
  }

  @Test
  void on_a_full_disk_nothing_is_lost_and_it_goes_on_once_there_is_room()
      throws IOException, InterruptedException {
    SmallNetwork network = onDisk(24);
    network.state(
        SmallNetwork.Export.PATIENTS,
        IntStream.range(0, 3_000)
            .mapToObj(
                i ->
                    "Q%d, 999010000%06d, , 2026-10-01, , Cy Marsh %d, 212 555 %04d"
                        .formatted(i, 1000 + i, i, i))
            .collect(Collectors.joining("\n")));
    network.export(OCTOBER);
    Path ballast = disk().resolve("ballast");
    long room = Files.getFileStore(disk()).getUsableSpace();
    Files.write(ballast, new byte[(int) (room - 200_000)]);
    CommandRun full = network.run(OCTOBER, "ingest", "--settled");
    assertThat(full.code()).as(full.toString()).isEqualTo(ExitCode.STORAGE.number());
    assertThat(full.err()).containsAnyOf("No room is left", "No space left");
    Files.delete(ballast);
    assertSound(network);
    assertThat(network.run(OCTOBER, "ingest", "--settled").code()).isZero();
    assertSound(network);
    assertThat(network.run(OCTOBER, "trace", "999010000001000").code()).isZero();
  }

  @Test
  void without_room_for_a_backup_a_vault_of_an_older_program_stays_as_it_is()
      throws IOException, InterruptedException, SQLException {
    SmallNetwork network = onDisk(24);
    Path vault = OlderVault.in(network.folder()).file();
    byte[] before = Files.readAllBytes(vault);
    Path ballast = disk().resolve("ballast");
    long room = Files.getFileStore(disk()).getUsableSpace();
    Files.write(ballast, new byte[(int) (room - 100_000)]);
    CommandRun full = network.run(OCTOBER, "verify");
    assertThat(full.code()).as(full.toString()).isEqualTo(ExitCode.STORAGE.number());
    assertThat(full.err()).contains("Expected to take a backup", "nothing was changed");
    assertThat(Files.readAllBytes(vault)).isEqualTo(before);
    assertThat(network.folder().resolve("backups")).isEmptyDirectory();
    Files.delete(ballast);
    assertSound(network);
    assertThat(OlderVault.format(vault)).isEqualTo(2);
  }

  @Test
  void a_folder_that_can_t_be_written_is_told_and_left_as_it_is()
      throws IOException, InterruptedException {
    SmallNetwork network = onDisk(24);
    assertThat(does("mount", "-o", "remount,ro", disk().toString())).isTrue();
    for (String command : new String[] {"run", "reconcile", "report"}) {
      CommandRun refused = network.run(OCTOBER, command);
      assertThat(refused.code()).as(refused.toString()).isEqualTo(ExitCode.STORAGE.number());
      assertThat(refused.err()).startsWith("withers: ").hasLineCount(1);
    }
    assertThat(does("mount", "-o", "remount,rw", disk().toString())).isTrue();
    assertSound(network);
    assertThat(network.run(OCTOBER, "run").code()).isZero();
  }

  @Test
  void a_clock_that_was_set_back_changes_no_follow_up() throws IOException {
    SmallNetwork network = network(place.resolve("network"));
    RunStore runs = new RunStore(network.folder().resolve("runs"));
    String latest = runs.latest().orElseThrow().id();
    CommandRun early = network.run(LONG_AGO, "run");
    assertThat(early.code()).as(early.toString()).isIn(0, 1);
    assertThat(runs.latest().orElseThrow().id()).isEqualTo(latest);
    assertThat(network.run(OCTOBER, "reconcile").code()).isZero();
    var after = runs.latest().orElseThrow();
    assertThat(after.asOf()).isEqualTo(OCTOBER);
    assertThat(after.opened()).isEmpty();
    assertThat(after.stillOpen()).isNotEmpty();
    assertThat(after.closed()).isEmpty();
    assertSound(network);
  }

  @Test
  void files_of_a_newer_program_are_refused_and_left_as_they_are()
      throws IOException, SQLException {
    SmallNetwork network = network(place.resolve("network"));
    for (String name : new String[] {"events.db", "contacts.db"}) {
      Path file = network.folder().resolve("log").resolve(name);
      byte[] before = Files.readAllBytes(file);
      setVersion(file);
      byte[] newer = Files.readAllBytes(file);
      for (String command : new String[] {"run", "report", "verify"}) {
        CommandRun refused = network.run(OCTOBER, command);
        assertThat(refused.code()).as(refused.toString()).isEqualTo(ExitCode.STORAGE.number());
        assertThat(refused.err()).contains("which a newer program wrote; use that one");
      }
      assertThat(file).hasBinaryContent(newer);
      Files.write(file, before);
      assertSound(network);
    }
  }

  private static void setVersion(Path file) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA user_version=99");
      statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
    }
  }
}
