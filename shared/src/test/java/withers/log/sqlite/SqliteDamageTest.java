package withers.log.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.log.EventLog;
import withers.log.LogDamagedException;
import withers.log.LogUnavailableException;
import withers.log.Replayed;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SqliteDamageTest {

  private static final String CHUNK =
      "Event log, stream chips, partition 0, import 00000000-0000-4000-8000-000000000002, batch 1,"
          + " piece 1";

  @TempDir private Path folder;
  private Path file;
  private Replayed whole;

  @BeforeEach
  void fill() {
    file = folder.resolve("events.db");
    whole = FilledLog.at(file);
    assertThat(whole.events()).hasSize(3 * 2_010);
  }

  @Test
  void a_whole_log_shows_what_was_written() {
    assertThat(read()).isEqualTo(whole);
  }

  @Test
  void a_flipped_bit_of_a_chunk_is_noticed_and_its_place_named() throws SQLException {
    byte[] body = body();
    Random random = new Random(5);
    for (int i = 0; i < 30; i++) {
      byte[] flipped = body.clone();
      flipped[random.nextInt(body.length)] ^= (byte) (1 << random.nextInt(8));
      store(flipped);
      assertThatThrownBy(this::read)
          .isInstanceOf(LogDamagedException.class)
          .hasMessage(CHUNK + ": the checksum does not fit; restore a backup");
    }
    store(body);
    assertThat(read()).isEqualTo(whole);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          DELETE FROM chunk WHERE stream = 'chips' AND sequence = 1 AND piece = 0
          UPDATE chunk SET partition = 9 WHERE stream = 'chips' AND partition = 1
          UPDATE chunk SET stream = 'supply' WHERE stream = 'unplaced'
          UPDATE chunk SET sequence = 7 WHERE stream = 'chips' AND sequence = 1
          UPDATE chunk SET piece = piece + 1 WHERE piece = 1
          UPDATE chunk SET events = events + 1 WHERE partition = 2
          UPDATE chunk SET length = length - 1 WHERE partition = 2
          UPDATE chunk SET length = 2147483647 WHERE partition = 2
          UPDATE chunk SET checksum = 0 WHERE partition = 2
          UPDATE chunk SET body = x'' WHERE partition = 2
          UPDATE chunk SET import = zeroblob(16) WHERE stream = 'chips' AND partition = 1 AND substr(hex(import), 32) = '1'
          INSERT INTO chunk SELECT stream, partition, import, 99, piece, events, length, checksum, body FROM chunk WHERE stream = 'unplaced'
          DELETE FROM marker WHERE position = 3
          DELETE FROM marker WHERE position = 1
          UPDATE marker SET position = 9 WHERE position = 3
          UPDATE marker SET contents = '' WHERE position = 2
          UPDATE marker SET contents = replace(contents, ' 300', ' 301') WHERE position = 2
          UPDATE marker SET body = replace(body, 'beta', 'bet0') WHERE position = 3
          UPDATE marker SET body = replace(body, '"rows":3', '"rows":4') WHERE position = 3
          UPDATE marker SET body = 'nothing' WHERE position = 3
          UPDATE head SET markers = 2
          """)
  void a_changed_row_is_noticed(String change) throws SQLException {
    try (Connection connection = plain();
        PreparedStatement statement = connection.prepareStatement(change)) {
      assertThat(statement.executeUpdate()).isPositive();
    }
    assertThatThrownBy(this::read)
        .isInstanceOf(LogDamagedException.class)
        .hasMessageStartingWith("Event log, ");
  }

  @Test
  void a_missing_chunk_is_counted() throws SQLException {
    try (Connection connection = plain();
        PreparedStatement statement =
            connection.prepareStatement(
                "DELETE FROM chunk WHERE partition = 2 AND hex(import) LIKE '%3'")) {
      assertThat(statement.executeUpdate()).isEqualTo(1);
    }
    assertThatThrownBy(this::read)
        .isInstanceOf(LogDamagedException.class)
        .hasMessage(
            "Event log, stream chips, partition 2, import 00000000-0000-4000-8000-000000000003:"
                + " expected 1 chunks of 300 events, but found 0 of 0; restore a backup");
  }

  @Test
  void a_bit_flipped_anywhere_in_the_file_is_noticed_or_harmless() throws IOException {
    byte[] bytes = Files.readAllBytes(file);
    int noticed = 0;
    for (long seed = 0; seed < 100; seed++) {
      Random random = new Random(seed);
      byte[] flipped = bytes.clone();
      flipped[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
      Files.write(file, flipped);
      noticed += noticed("seed " + seed) ? 1 : 0;
      Files.deleteIfExists(folder.resolve("events.db-wal"));
      Files.deleteIfExists(folder.resolve("events.db-shm"));
    }
    assertThat(noticed).isGreaterThan(30);
  }

  private boolean noticed(String what) {
    try {
      assertThat(read()).as(what).isEqualTo(whole);
      return false;
    } catch (LogDamagedException | LogUnavailableException expected) {
      return true;
    }
  }

  private Replayed read() {
    try (EventLog log = SqliteEventLog.open(file)) {
      return Replayed.of(log.snapshot());
    }
  }

  private Connection plain() throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + file);
  }

  private static final String WHERE =
      " WHERE stream = 'chips' AND partition = 0 AND sequence = 1 AND piece = 1 AND hex(import) LIKE"
          + " '%2'";

  private byte[] body() throws SQLException {
    try (Connection connection = plain();
        PreparedStatement select = connection.prepareStatement("SELECT body FROM chunk" + WHERE);
        ResultSet row = select.executeQuery()) {
      return row.getBytes(1);
    }
  }

  private void store(byte[] body) throws SQLException {
    try (Connection connection = plain();
        PreparedStatement update =
            connection.prepareStatement("UPDATE chunk SET body = ?" + WHERE)) {
      update.setBytes(1, body);
      assertThat(update.executeUpdate()).isEqualTo(1);
    }
  }
}
