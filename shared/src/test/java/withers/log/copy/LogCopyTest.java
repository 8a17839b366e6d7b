package withers.log.copy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import withers.codec.Streams;
import withers.fact.RandomEvents;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.kafka.Broker;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogDamagedException;
import withers.log.LogSnapshot;
import withers.log.LogUnavailableException;
import withers.log.Replayed;
import withers.log.SampleMarkers;
import withers.log.memory.MemoryEventLog;
import withers.log.sqlite.SqliteEventLog;

@Tag("kafka")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Timeout(value = 2, unit = TimeUnit.MINUTES)
class LogCopyTest {

  @RegisterExtension static final Broker BROKER = new Broker();

  @TempDir private Path folder;
  private final String prefix = BROKER.newPrefix();
  private final RandomEvents random = new RandomEvents(424242);

  @AfterEach
  void drop() {
    BROKER.drop(prefix);
  }

  @Test
  void there_and_back_everything_is_as_it_was() {
    try (EventLog embedded = SqliteEventLog.open(folder.resolve("events.db"));
        EventLog kafka = BROKER.log(prefix);
        EventLog back = SqliteEventLog.open(folder.resolve("back.db"))) {
      fill(embedded, 1, 6);
      Replayed original = Replayed.of(embedded.snapshot());
      LogSum there = new LogCopy(embedded, kafka).run(events -> {});
      assertThat(Replayed.of(kafka.snapshot())).isEqualTo(original);
      assertThat(new LogCopy(kafka, back).run(events -> {})).isEqualTo(there);
      assertThat(Replayed.of(back.snapshot())).isEqualTo(original);
      assertThat(there.imports()).isEqualTo(6);
      assertThat(there.events()).isEqualTo(original.events().size());
    }
  }

  @Test
  void it_goes_on_where_it_was_stopped() {
    try (EventLog source = new MemoryEventLog();
        EventLog kafka = BROKER.log(prefix)) {
      fill(source, 1, 5);
      List<Long> groups = new ArrayList<>();
      assertThatThrownBy(
              () ->
                  new LogCopy(source, kafka, 1)
                      .run(
                          events -> {
                            groups.add(events);
                            if (groups.size() == 3) {
                              throw new IllegalStateException("stopped");
                            }
                          }))
          .hasMessage("stopped");
      assertThat(kafka.snapshot().markers()).hasSize(3);
      kafka.append(batch(4, 40)); // what a stop in the midst of the fourth leaves behind
      new LogCopy(source, kafka, 1).run(groups::add);
      assertThat(groups).hasSize(5);
      assertThat(Replayed.of(kafka.snapshot())).isEqualTo(Replayed.of(source.snapshot()));
      fill(source, 6, 7);
      new LogCopy(source, kafka).run(groups::add);
      assertThat(groups).hasSize(6);
      assertThat(kafka.snapshot().markers()).hasSize(7);
    }
  }

  @Test
  void a_log_with_imports_of_its_own_is_refused() {
    try (EventLog source = new MemoryEventLog();
        EventLog target = new MemoryEventLog()) {
      fill(source, 1, 2);
      fill(target, 3, 3);
      assertThatThrownBy(() -> new LogCopy(source, target).run(events -> {}))
          .isInstanceOf(LogUnavailableException.class)
          .hasMessageStartingWith("Expected the log that is copied to to be empty");
      assertThat(target.snapshot().markers()).hasSize(1);
    }
  }

  @Test
  void a_copy_that_lost_an_event_is_noticed() {
    try (EventLog source = new MemoryEventLog();
        EventLog target = new MemoryEventLog()) {
      fill(source, 1, 2);
      EventLog losing = new Losing(target);
      assertThatThrownBy(() -> new LogCopy(source, losing).run(events -> {}))
          .isInstanceOf(LogDamagedException.class)
          .hasMessageStartingWith("The copy is not what was copied: expected 2 imports with ");
    }
  }

  @Test
  void a_sum_does_not_depend_on_partitions_but_on_everything_else() {
    LogSum one = sum(3, 1, 7);
    assertThat(sum(5, 1, 7)).isEqualTo(one);
    assertThat(sum(3, 1, 8)).isNotEqualTo(one);
    assertThat(sum(3, 2, 7)).isNotEqualTo(one);
    assertThat(one.checksum()).matches("[0-9a-f]{32}");
  }

  private static LogSum sum(int partition, long importId, long seed) {
    try (EventLog log = new MemoryEventLog()) {
      ImportId id = SampleMarkers.id(importId);
      log.append(new Batch<>(Streams.CHIPS, partition, id, 0, new RandomEvents(seed).events(20)));
      log.commit(SampleMarkers.marker(id, Optional.empty(), "alpha"));
      return LogSum.of(log.snapshot());
    }
  }

  /** Imports of two sources, with many events in some places and none in most. */
  private void fill(EventLog log, int first, int last) {
    for (int number = first; number <= last; number++) {
      for (int i = 0; i < 4; i++) {
        log.append(batch(number, 10 * i + number % 3));
      }
      ImportId id = SampleMarkers.id(number);
      log.append(new Batch<>(Streams.SUPPLY, 0, id, 0, random.events(3)));
      String chain = number % 2 == 0 ? "alpha" : "beta";
      ImportMarker newest = log.snapshot().newest(new SourceId(chain)).orElse(null);
      log.commit(
          SampleMarkers.marker(id, Optional.ofNullable(newest).map(ImportMarker::id), chain));
    }
  }

  private Batch<?> batch(int number, int partition) {
    return new Batch<>(Streams.CHIPS, partition, SampleMarkers.id(number), 0, random.events(1_200));
  }

  /** Drops the first event of every batch. */
  private record Losing(EventLog log) implements EventLog {

    @Override
    public <E> void append(Batch<E> batch) {
      log.append(
          new Batch<>(
              batch.stream(),
              batch.partition(),
              batch.importId(),
              batch.sequence(),
              batch.events().subList(1, batch.events().size())));
    }

    @Override
    public void commit(ImportMarker marker) {
      log.commit(marker);
    }

    @Override
    public LogSnapshot snapshot() {
      return log.snapshot();
    }

    @Override
    public long sweep() {
      return log.sweep();
    }

    @Override
    public void close() {
      log.close();
    }
  }
}
