package withers.log.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.RandomEvents;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.LogDamagedException;
import withers.log.SampleMarkers;
import withers.sqlite.Upgrading;
import withers.workspace.OwnerOnly;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ChipFiltersTest {

  private static final int PARTITION = 3;
  private static final int IMPORTS = 3;
  private static final int BATCHES = 4;
  private static final int EVENTS = 150;

  @TempDir private Path folder;
  private final RandomEvents random = new RandomEvents(31);

  /** What each import brought, batch by batch. */
  private final List<List<ChipEvent>> batches = new ArrayList<>();

  @BeforeEach
  void fill() {
    try (EventLog log = open()) {
      for (long number = 1; number <= IMPORTS; number++) {
        for (int i = 0; i < BATCHES; i++) {
          List<ChipEvent> events = Stream.generate(random::chipEvent).limit(EVENTS).toList();
          batches.add(events);
          log.append(new Batch<>(Streams.CHIPS, PARTITION, SampleMarkers.id(number), i, events));
        }
        log.commit(
            SampleMarkers.marker(SampleMarkers.id(number), Optional.empty(), "source-" + number));
      }
    }
  }

  @Test
  void of_a_chip_no_more_is_decoded_than_the_chunks_that_speak_of_it() {
    for (List<ChipEvent> batch : batches) {
      assertThat(decodedFor(chip(batch))).isEqualTo(batch);
    }
  }

  @Test
  void of_a_chip_that_nobody_speaks_of_nothing_is_decoded() {
    assertThat(decodedFor(random.chip())).isEmpty();
  }

  @Test
  void without_their_files_all_is_decoded() throws IOException {
    deleteFiles();
    assertThat(decodedFor(chip(batches.get(5)))).isEqualTo(all());
  }

  @Test
  void a_file_of_another_import_says_nothing() throws IOException {
    Files.copy(file(1), file(2), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    List<ChipEvent> expected = new ArrayList<>();
    batches.subList(BATCHES, 2 * BATCHES).forEach(expected::addAll);
    assertThat(decodedFor(random.chip())).isEqualTo(expected);
  }

  @Test
  void a_file_that_is_damaged_anywhere_or_cut_short_hides_nothing() throws IOException {
    byte[] whole = Files.readAllBytes(file(2));
    for (long seed = 0; seed < 300; seed++) {
      Random chance = new Random(seed);
      byte[] damaged = whole.clone();
      damaged[chance.nextInt(whole.length)] ^= (byte) (1 << chance.nextInt(8));
      Files.write(file(2), seed % 3 == 0 ? first(damaged, chance.nextInt(whole.length)) : damaged);
      List<ChipEvent> batch = batches.get(BATCHES + chance.nextInt(BATCHES));
      assertThat(decodedFor(chip(batch))).as("seed %d", seed).containsAll(batch);
    }
  }

  private static byte[] first(byte[] bytes, int count) {
    return java.util.Arrays.copyOf(bytes, count);
  }

  @Test
  void what_is_missing_is_made_again_by_sweeping() throws IOException {
    Set<String> before = files().keySet();
    deleteFiles();
    try (EventLog log = open()) {
      log.sweep();
    }
    assertThat(files().keySet()).isEqualTo(before);
    of_a_chip_no_more_is_decoded_than_the_chunks_that_speak_of_it();
  }

  @Test
  void a_file_is_left_alone_by_sweeping() throws IOException {
    Files.setLastModifiedTime(file(1), java.nio.file.attribute.FileTime.fromMillis(0));
    try (EventLog log = open()) {
      log.sweep();
    }
    assertThat(Files.getLastModifiedTime(file(1)).toMillis()).isZero();
  }

  @Test
  void files_are_their_owner_s_only() throws IOException {
    assertThat(Files.getPosixFilePermissions(file(1))).hasSize(2);
    assertThat(Files.getPosixFilePermissions(file(1).getParent())).hasSize(3);
  }

  @Test
  void chunks_of_few_events_have_none() throws IOException {
    try (EventLog log = open()) {
      log.append(new Batch<>(Streams.CHIPS, PARTITION, SampleMarkers.id(9), 0, random.events(99)));
      log.append(new Batch<>(Streams.UNPLACED, 0, SampleMarkers.id(9), 0, random.events(200)));
      log.commit(SampleMarkers.marker(SampleMarkers.id(9), Optional.empty(), "another"));
    }
    assertThat(files()).hasSize(IMPORTS);
  }

  @Test
  void damage_of_what_is_passed_over_is_told_by_its_count_or_when_it_is_needed()
      throws SQLException {
    change("UPDATE chunk SET body = zeroblob(length(body)) WHERE sequence = 1");
    assertThat(decodedFor(chip(batches.get(0)))).isEqualTo(batches.get(0));
    ChipNumber damaged = chip(batches.get(1));
    assertThatThrownBy(() -> decodedFor(damaged))
        .isInstanceOf(LogDamagedException.class)
        .hasMessageEndingWith("batch 1, piece 0: the checksum does not fit; restore a backup");
    change("DELETE FROM chunk WHERE sequence = 2");
    ChipNumber elsewhere = chip(batches.get(0));
    assertThatThrownBy(() -> decodedFor(elsewhere))
        .isInstanceOf(LogDamagedException.class)
        .hasMessageEndingWith(
            "expected 4 chunks of 600 events, but found 3 of 450; restore a backup");
  }

  @Test
  void sweeping_passes_over_a_damaged_chunk() throws IOException, SQLException {
    change("UPDATE chunk SET body = zeroblob(length(body)) WHERE sequence = 1");
    deleteFiles();
    try (EventLog log = open()) {
      assertThat(log.sweep()).isZero();
    }
    assertThat(files()).hasSize(IMPORTS);
    ChipNumber chip = chip(batches.get(0));
    assertThatThrownBy(() -> decodedFor(chip)).isInstanceOf(LogDamagedException.class);
  }

  @Test
  void where_none_can_be_written_the_log_is_as_without() throws IOException {
    deleteFiles();
    Files.delete(folder.resolve("filters"));
    Files.writeString(folder.resolve("filters"), "a file");
    try (EventLog log = open()) {
      assertThat(log.sweep()).isZero();
    }
    assertThat(decodedFor(chip(batches.get(5)))).isEqualTo(all());
  }

  private EventLog open() {
    return SqliteEventLog.open(
        folder.resolve("events.db"),
        Upgrading.REFUSED,
        ChipFilters.in(folder.resolve("filters"), OwnerOnly::openAnew));
  }

  private Path file(long number) {
    return folder.resolve("filters").resolve(SampleMarkers.id(number).toString());
  }

  private Map<String, byte[]> files() throws IOException {
    Map<String, byte[]> all = new TreeMap<>();
    try (Stream<Path> files = Files.list(folder.resolve("filters"))) {
      for (Path file : files.toList()) {
        all.put(file.getFileName().toString(), Files.readAllBytes(file));
      }
    }
    return all;
  }

  private void deleteFiles() throws IOException {
    for (String name : files().keySet()) {
      Files.delete(folder.resolve("filters").resolve(name));
    }
  }

  /** A chip that this batch alone speaks of; random ones hardly ever repeat. */
  private static ChipNumber chip(List<ChipEvent> batch) {
    return batch.get(EVENTS / 2).subject().chip().orElseThrow();
  }

  private List<ChipEvent> all() {
    return batches.stream().flatMap(List::stream).toList();
  }

  private List<ChipEvent> decodedFor(ChipNumber chip) {
    List<ChipEvent> decoded = new ArrayList<>();
    try (EventLog log = open()) {
      log.snapshot()
          .replayAbout(
              Set.of(chip),
              Streams.CHIPS,
              PARTITION,
              marker -> true,
              (event, marker) -> decoded.add(event));
    }
    return decoded;
  }

  private void change(String sql) throws SQLException {
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("events.db"));
        Statement statement = connection.createStatement()) {
      assertThat(statement.executeUpdate(sql)).isPositive();
    }
  }
}
