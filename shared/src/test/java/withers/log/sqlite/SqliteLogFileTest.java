package withers.log.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.RandomEvents;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.LogSnapshot;
import withers.log.LogStream;
import withers.log.LogUnavailableException;
import withers.log.Replayed;
import withers.log.SampleMarkers;
import withers.sqlite.SqliteFile;
import withers.sqlite.Upgrading;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SqliteLogFileTest {

  @TempDir private Path folder;

  @Test
  void files_are_for_their_owner_alone() throws IOException {
    Path file = folder.resolve("events.db");
    try (EventLog log = SqliteEventLog.open(file)) {
      log.append(new Batch<>(Streams.CHIPS, 0, SampleMarkers.id(1), 0, List.of()));
      for (String name : List.of("events.db", "events.db-wal", "events.db-shm")) {
        assertThat(
                PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve(name))))
            .as(name)
            .isEqualTo("rw-------");
      }
    }
    assertThat(folder.toFile().list()).containsExactly("events.db");
  }

  @Test
  void an_empty_file_becomes_a_log() throws IOException {
    Path file = Files.createFile(folder.resolve("events.db"));
    assertThat(FilledLog.at(file).markers()).hasSize(3);
  }

  @Test
  void refuses_another_kind_of_file() throws IOException {
    Path file = Files.writeString(folder.resolve("events.db"), "name,phone\n".repeat(1000));
    assertRefused(file, "Expected the event log, but found another kind of file: " + file);
    assertThat(file).hasContent("name,phone\n".repeat(1000));
  }

  @Test
  void refuses_another_program_s_file() throws SQLException {
    Path file = folder.resolve("events.db");
    change(file, "CREATE TABLE theirs(x)");
    assertRefused(file, "Expected the event log, but found a file of another program: " + file);
  }

  @Test
  void refuses_a_newer_format() throws SQLException {
    Path file = folder.resolve("events.db");
    FilledLog.at(file);
    change(file, "PRAGMA user_version = 2");
    assertRefused(
        file,
        "Expected the event log of format 1 to 1, but found format 2, which a newer program wrote;"
            + " use that one: "
            + file);
  }

  @Test
  void refuses_a_log_begun_with_other_partitions() throws SQLException {
    Path file = folder.resolve("events.db");
    FilledLog.at(file);
    change(file, "UPDATE stream SET partitions = 32 WHERE name = 'chips'");
    assertRefused(
        file,
        "Expected 64 partitions of chips, but the event log was begun with 32; only copying it"
            + " changes that");
  }

  @Test
  void refuses_a_stream_with_other_partitions() {
    LogStream<ChipEvent> narrow = new LogStream<>("chips", 8, Streams.CHIPS.codec());
    String message =
        "Expected 8 partitions of chips, but the event log was begun with 64; only copying it"
            + " changes that";
    try (EventLog log = SqliteEventLog.open(folder.resolve("events.db"))) {
      assertThatThrownBy(
              () -> log.append(new Batch<>(narrow, 0, SampleMarkers.id(1), 0, List.of())))
          .isInstanceOf(LogUnavailableException.class)
          .hasMessage(message);
      LogSnapshot snapshot = log.snapshot();
      assertThatThrownBy(() -> snapshot.replay(narrow, 0, (event, marker) -> {}))
          .isInstanceOf(LogUnavailableException.class)
          .hasMessage(message);
    }
  }

  @Test
  void refuses_a_folder_and_a_missing_folder() {
    assertRefused(folder, "Expected the event log to be a file: " + folder);
    Path nowhere = folder.resolve("missing").resolve("events.db");
    assertRefused(
        nowhere,
        "Can't make the event log; see that its folder exists and may be written: " + nowhere);
  }

  @Test
  void says_that_another_program_is_writing() throws SQLException {
    Path path = folder.resolve("events.db");
    SqliteFile hasty =
        new SqliteFile(path, LogSchema.FORMAT, Upgrading.REFUSED, Duration.ofMillis(20));
    try (EventLog log = SqliteEventLog.open(hasty, ChipFilters.NONE);
        Connection other = DriverManager.getConnection("jdbc:sqlite:" + path);
        Statement statement = other.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      Batch<ChipEvent> batch =
          new Batch<>(Streams.CHIPS, 0, SampleMarkers.id(1), 0, new RandomEvents(1).events(2));
      assertThatThrownBy(() -> log.append(batch))
          .isInstanceOf(LogUnavailableException.class)
          .hasMessage("The event log is in use by another program; repeat later: " + path);
      assertThat(log.snapshot().markers()).isEmpty();
      statement.execute("ROLLBACK");
      log.append(batch);
      log.commit(SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "alpha"));
      assertThat(Replayed.of(log.snapshot()).events()).hasSize(2);
    }
  }

  @Test
  void says_that_the_file_cannot_be_written() throws SQLException {
    Path path = folder.resolve("events.db");
    FilledLog.at(path);
    SqliteFile file = new SqliteFile(path, LogSchema.FORMAT, Upgrading.REFUSED);
    try (Connection writer = file.openForWriting();
        Connection reader = file.openForReading()) {
      assertThat(writer.isClosed()).isFalse();
      assertThatThrownBy(
              () -> file.trying(() -> reader.createStatement().execute("DELETE FROM chunk")))
          .isInstanceOf(LogUnavailableException.class)
          .hasMessage("The event log can't be opened for writing; see who may write it: " + path);
    }
  }

  @Test
  void what_a_killed_program_committed_is_there_and_the_rest_is_swept() throws Exception {
    Path file = folder.resolve("events.db");
    Process killed =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "--enable-native-access=ALL-UNNAMED", // newer JDKs warn without it
                "-cp",
                System.getProperty("java.class.path"),
                HaltsInTheMidst.class.getName(),
                file.toString())
            .inheritIO()
            .start();
    assertThat(killed.waitFor(1, TimeUnit.MINUTES)).isTrue();
    assertThat(killed.exitValue()).isEqualTo(HaltsInTheMidst.STATUS);
    try (EventLog log = SqliteEventLog.open(file)) {
      Replayed seen = Replayed.of(log.snapshot());
      assertThat(seen.markers()).hasSize(1);
      assertThat(seen.events()).hasSize(1_500);
      assertThat(log.sweep()).isEqualTo(2);
      assertThat(Replayed.of(log.snapshot())).isEqualTo(seen);
    }
  }

  /** A program that dies between the batches of its second import. */
  static final class HaltsInTheMidst {
    static final int STATUS = 3;

    private HaltsInTheMidst() {}

    public static void main(String[] args) {
      EventLog log = SqliteEventLog.open(Path.of(args[0]));
      RandomEvents random = new RandomEvents(1);
      log.append(new Batch<>(Streams.CHIPS, 0, SampleMarkers.id(1), 0, random.events(1_500)));
      log.commit(SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "alpha"));
      log.append(new Batch<>(Streams.CHIPS, 0, SampleMarkers.id(2), 0, random.events(1_500)));
      log.append(new Batch<>(Streams.CHIPS, 1, SampleMarkers.id(2), 0, random.events(10)));
      Runtime.getRuntime().halt(STATUS);
    }
  }

  private static void assertRefused(Path file, String message) {
    assertThatThrownBy(() -> SqliteEventLog.open(file).close())
        .isInstanceOf(LogUnavailableException.class)
        .hasMessage(message);
  }

  private static void change(Path file, String sql) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }
}
