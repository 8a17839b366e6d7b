package withers.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withers.cases.Anchor;
import withers.cases.CaseEvent;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.RandomEvents;
import withers.id.OrganisationId;
import withers.id.SourceId;

/**
 * Everything that {@link EventLog} and {@link LogSnapshot} promise. An implementation's test
 * extends this and says how to open its log; one that keeps its events beyond the program extends
 * {@link DurableEventLogContract}. No test here passes on a log that does nothing.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
public abstract class EventLogContract {

  private static final int CHIP_PARTITIONS = Streams.CHIPS.partitions();

  private final RandomEvents random = new RandomEvents(20240229);

  /** Opens the log of the running test, empty at the first call. */
  protected abstract EventLog open();

  @Test
  void an_import_is_invisible_until_it_is_committed() {
    try (EventLog log = open()) {
      List<ChipEvent> events = random.events(10);
      Importer importer = new Importer(log, "alpha", 1).append(3, events);
      assertThat(log.snapshot().markers()).isEmpty();
      assertThat(Seen.in(log.snapshot(), Streams.CHIPS, 3)).isEmpty();
      ImportMarker marker = importer.commit();
      assertThat(log.snapshot().markers()).containsExactly(marker);
      assertThat(Seen.in(log.snapshot(), Streams.CHIPS, 3))
          .isEqualTo(Seen.by(importer.id(), events));
    }
  }

  @Test
  void a_commit_shows_all_streams_and_partitions_at_once() {
    try (EventLog log = open()) {
      Importer importer = new Importer(log, "alpha", 1);
      List<List<ChipEvent>> chips = eachPartition(importer);
      List<ChipEvent> supply = random.events(2);
      List<ChipEvent> unplaced = random.events(2);
      importer.append(Streams.SUPPLY, 0, supply).append(Streams.UNPLACED, 0, unplaced);
      importer.append(Streams.CASES, 0, List.of(caseOpened()));
      importer.commit();
      LogSnapshot snapshot = log.snapshot();
      for (int p = 0; p < CHIP_PARTITIONS; p++) {
        assertThat(Seen.in(snapshot, Streams.CHIPS, p))
            .isEqualTo(Seen.by(importer.id(), chips.get(p)));
      }
      assertThat(Seen.in(snapshot, Streams.SUPPLY, 0)).isEqualTo(Seen.by(importer.id(), supply));
      assertThat(Seen.in(snapshot, Streams.UNPLACED, 0))
          .isEqualTo(Seen.by(importer.id(), unplaced));
      assertThat(Seen.in(snapshot, Streams.CASES, 0))
          .isEqualTo(Seen.by(importer.id(), List.of(caseOpened())));
    }
  }

  @Test
  void imports_come_in_the_order_of_their_commits_and_batches_in_that_of_their_sequence() {
    try (EventLog log = open()) {
      List<ChipEvent> a = random.events(30);
      List<ChipEvent> b = random.events(30);
      Importer first = new Importer(log, "alpha", 2).append(0, a.subList(0, 10));
      Importer second = new Importer(log, "beta", 1).append(0, b.subList(0, 20));
      first.append(0, a.subList(10, 11));
      second.append(0, b.subList(20, 30)).commit();
      first.append(0, a.subList(11, 30)).commit();
      List<Seen> expected = new ArrayList<>(Seen.by(second.id(), b));
      expected.addAll(Seen.by(first.id(), a));
      assertThat(Seen.in(log.snapshot(), Streams.CHIPS, 0)).isEqualTo(expected);
    }
  }

  @Test
  void batches_appended_together_are_each_in_their_place() {
    try (EventLog log = open()) {
      Importer importer = new Importer(log, "alpha", 1).append(0, random.events(1));
      List<ChipEvent> more = random.events(1_200);
      List<ChipEvent> supply = random.events(2);
      log.appendAll(
          List.of(
              new Batch<>(Streams.CHIPS, 0, importer.id(), 1, more.subList(0, 3)),
              new Batch<>(Streams.CHIPS, 0, importer.id(), 2, more.subList(3, 1_200)),
              new Batch<>(Streams.SUPPLY, 0, importer.id(), 0, supply)));
      assertThat(log.snapshot().markers()).isEmpty();
      importer.commit();
      List<Seen> chips = Seen.in(log.snapshot(), Streams.CHIPS, 0);
      assertThat(chips.subList(1, chips.size())).isEqualTo(Seen.by(importer.id(), more));
      assertThat(Seen.in(log.snapshot(), Streams.SUPPLY, 0))
          .isEqualTo(Seen.by(importer.id(), supply));
    }
  }

  @Test
  void every_event_keeps_its_marker_and_every_marker_its_details() {
    try (EventLog log = open()) {
      Importer importer = new Importer(log, "alpha", 1).append(0, random.events(3));
      ImportMarker committed = importer.commit();
      List<ImportMarker> markers = new ArrayList<>();
      log.snapshot().replay(Streams.CHIPS, 0, (event, marker) -> markers.add(marker));
      assertThat(markers).containsExactly(committed, committed, committed);
    }
  }

  @Test
  void a_snapshot_stays_as_it_was_taken() {
    try (EventLog log = open()) {
      Importer first = new Importer(log, "alpha", 1).append(5, random.events(4));
      first.commit();
      LogSnapshot early = log.snapshot();
      List<Seen> seen = Seen.in(early, Streams.CHIPS, 5);
      List<ImportMarker> markers = early.markers();
      new Importer(log, "alpha", 2).append(5, random.events(4)).commit();
      new Importer(log, "beta", 3).append(5, random.events(4)).commit();
      assertThat(Seen.in(early, Streams.CHIPS, 5)).isEqualTo(seen).hasSize(4);
      assertThat(early.markers()).isEqualTo(markers).hasSize(1);
      assertThat(Seen.in(log.snapshot(), Streams.CHIPS, 5)).hasSize(12);
    }
  }

  @Test
  void a_stale_parent_is_refused_and_shows_nothing_until_it_commits_anew() {
    try (EventLog log = open()) {
      List<ChipEvent> late = random.events(5);
      ImportMarker base = new Importer(log, "alpha", 1).append(0, random.events(1)).commit();
      Importer slow = new Importer(log, "alpha", 2).append(0, late);
      ImportMarker quick = new Importer(log, "alpha", 3).append(0, random.events(1)).commit();
      assertThatThrownBy(() -> slow.commitAfter(Optional.of(base.id())))
          .isInstanceOf(StaleParentException.class)
          .hasMessage("Another import of alpha was committed meanwhile; compare again and repeat");
      assertThat(log.snapshot().markers()).containsExactly(base, quick);
      assertThat(Seen.in(log.snapshot(), Streams.CHIPS, 0)).hasSize(2);
      slow.commitAfter(Optional.of(quick.id()));
      assertThat(Seen.in(log.snapshot(), Streams.CHIPS, 0))
          .hasSize(7)
          .endsWith(Seen.by(slow.id(), late).toArray(Seen[]::new));
    }
  }

  @Test
  void a_chain_starts_without_a_parent_and_only_once() {
    try (EventLog log = open()) {
      assertThatThrownBy(
              () -> new Importer(log, "alpha", 2).commitAfter(Optional.of(SampleMarkers.id(1))))
          .isInstanceOf(StaleParentException.class);
      ImportMarker first = new Importer(log, "alpha", 3).commitAfter(Optional.empty());
      assertThatThrownBy(() -> new Importer(log, "alpha", 4).commitAfter(Optional.empty()))
          .isInstanceOf(StaleParentException.class);
      assertThat(log.snapshot().markers()).containsExactly(first);
    }
  }

  @Test
  void a_parent_of_another_chain_is_stale() {
    try (EventLog log = open()) {
      ImportMarker alpha = new Importer(log, "alpha", 1).commit();
      assertThatThrownBy(() -> new Importer(log, "beta", 2).commitAfter(Optional.of(alpha.id())))
          .isInstanceOf(StaleParentException.class);
      assertThat(log.snapshot().markers()).containsExactly(alpha);
    }
  }

  @Test
  void chains_go_on_side_by_side() {
    try (EventLog log = open()) {
      List<ImportMarker> committed = new ArrayList<>();
      for (int i = 0; i < 12; i++) {
        String chain = List.of("alpha", "beta", "gamma").get(i % 3);
        committed.add(new Importer(log, chain, 100 - i).append(i, random.events(2)).commit());
      }
      LogSnapshot snapshot = log.snapshot();
      assertThat(snapshot.markers()).isEqualTo(committed);
      assertThat(snapshot.newest(new SourceId("alpha"))).contains(committed.get(9));
      assertThat(snapshot.newest(new SourceId("gamma"))).contains(committed.get(11));
      assertThat(snapshot.newest(new SourceId("delta"))).isEmpty();
    }
  }

  @Test
  void imports_that_are_not_wanted_are_passed_over_without_decoding() {
    try (EventLog log = open()) {
      List<ChipEvent> wanted = random.events(3);
      new Importer(log, "alpha", 1).append(0, random.events(3)).commit();
      Importer chosen = new Importer(log, "beta", 2).append(0, wanted);
      chosen.commit();
      List<List<ChipEvent>> decoded = new ArrayList<>();
      List<Seen> seen =
          Seen.in(
              log.snapshot(),
              watched(Streams.CHIPS, decoded::add),
              0,
              marker -> marker.id().equals(chosen.id()));
      assertThat(seen).isEqualTo(Seen.by(chosen.id(), wanted));
      assertThat(decoded).allMatch(wanted::containsAll);
    }
  }

  @Test
  void a_selection_is_asked_in_the_order_of_commits() {
    try (EventLog log = open()) {
      List<ImportMarker> committed = new ArrayList<>();
      for (int i = 0; i < 5; i++) {
        committed.add(new Importer(log, "alpha", 9 - i).append(0, random.events(1)).commit());
      }
      List<ImportMarker> asked = new ArrayList<>();
      assertThat(Seen.in(log.snapshot(), Streams.CHIPS, 0, m -> !asked.add(m))).isEmpty();
      assertThat(asked).isEqualTo(committed);
    }
  }

  @Test
  void a_batch_of_many_chunks_comes_back_whole() {
    try (EventLog log = open()) {
      List<ChipEvent> many = random.events(5_432);
      List<ChipEvent> more = random.events(1_001);
      Importer importer = new Importer(log, "alpha", 1).append(0, many).append(0, more);
      importer.commit();
      List<ChipEvent> all = new ArrayList<>(many);
      all.addAll(more);
      assertThat(Seen.in(log.snapshot(), Streams.CHIPS, 0)).isEqualTo(Seen.by(importer.id(), all));
    }
  }

  @Test
  void an_import_without_events_is_a_marker() {
    try (EventLog log = open()) {
      ImportMarker none = new Importer(log, "alpha", 1).commit();
      ImportMarker empty = new Importer(log, "alpha", 2).append(0, List.of()).commit();
      assertThat(log.snapshot().markers()).containsExactly(none, empty);
      assertThat(Seen.in(log.snapshot(), Streams.CHIPS, 0)).isEmpty();
    }
  }

  @Test
  void sweeping_removes_what_was_never_committed_and_nothing_else() {
    try (EventLog log = open()) {
      Importer kept = new Importer(log, "alpha", 1).append(0, random.events(2_500));
      kept.commit();
      new Importer(log, "alpha", 2).append(0, random.events(2_500)).append(0, random.events(1));
      new Importer(log, "beta", 3).append(Streams.SUPPLY, 0, random.events(1));
      assertThat(log.sweep()).isEqualTo(3);
      assertThat(log.sweep()).isZero();
      assertThat(Seen.in(log.snapshot(), Streams.CHIPS, 0)).hasSize(2_500);
    }
  }

  @Test
  void a_committed_import_takes_no_more_batches_and_no_second_marker() {
    try (EventLog log = open()) {
      Importer importer = new Importer(log, "alpha", 1).append(0, random.events(1));
      ImportMarker marker = importer.commit();
      assertThatThrownBy(() -> importer.append(1, random.events(1)))
          .isInstanceOf(IllegalStateException.class)
          .hasMessage(
              "Expected an import without a marker, but import %s is committed"
                  .formatted(importer.id()));
      assertThatThrownBy(importer::commit).isInstanceOf(IllegalStateException.class);
      assertThat(log.snapshot().markers()).containsExactly(marker);
      assertThat(Seen.in(log.snapshot(), Streams.CHIPS, 1)).isEmpty();
    }
  }

  @Test
  void a_partition_that_is_not_there_is_refused() {
    try (EventLog log = open()) {
      LogSnapshot snapshot = log.snapshot();
      assertThatThrownBy(() -> Seen.in(snapshot, Streams.CHIPS, CHIP_PARTITIONS))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("Expected a partition from 0 to 63 of chips, but found 64");
    }
  }

  @Test
  void a_failing_handler_stops_the_replay_and_harms_nothing() {
    try (EventLog log = open()) {
      new Importer(log, "alpha", 1).append(0, random.events(10)).commit();
      IllegalStateException failure = new IllegalStateException("the handler's");
      assertThatThrownBy(
              () ->
                  log.snapshot()
                      .replay(
                          Streams.CHIPS,
                          0,
                          (event, marker) -> {
                            throw failure;
                          }))
          .isSameAs(failure);
      new Importer(log, "alpha", 2).append(0, random.events(10)).commit();
      assertThat(Seen.in(log.snapshot(), Streams.CHIPS, 0)).hasSize(20);
    }
  }

  @Test
  void a_closed_log_refuses_every_call() {
    EventLog log = open();
    Importer importer = new Importer(log, "alpha", 1);
    log.close();
    log.close();
    assertClosed(() -> importer.append(0, random.events(1)));
    assertClosed(() -> importer.commitAfter(Optional.empty()));
    assertClosed(log::snapshot);
    assertClosed(log::sweep);
  }

  @Test
  void partitions_are_written_and_read_side_by_side() throws Exception {
    try (EventLog log = open()) {
      List<List<ChipEvent>> events =
          IntStream.range(0, 16).mapToObj(p -> random.events(700)).toList();
      Importer before = new Importer(log, "alpha", 1).append(0, events.get(0));
      before.commit();
      LogSnapshot early = log.snapshot();
      List<Callable<List<Seen>>> work = new ArrayList<>();
      for (int p = 0; p < events.size(); p++) {
        work.add(writes(log, p, events.get(p)));
        work.add(() -> Seen.in(early, Streams.CHIPS, 0));
      }
      List<List<Seen>> seen = inParallel(work);
      for (int i = 1; i < seen.size(); i += 2) {
        assertThat(seen.get(i)).isEqualTo(Seen.by(before.id(), events.get(0)));
      }
      Importer importer = new Importer(log, "beta", 2);
      importer.commit();
      LogSnapshot late = log.snapshot();
      List<Callable<List<Seen>>> reads =
          IntStream.range(0, events.size())
              .<Callable<List<Seen>>>mapToObj(
                  p -> () -> Seen.in(late, Streams.CHIPS, p, m -> m.id().equals(importer.id())))
              .toList();
      List<List<Seen>> all = inParallel(reads);
      for (int p = 0; p < events.size(); p++) {
        assertThat(all.get(p)).isEqualTo(Seen.by(importer.id(), events.get(p)));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void a_random_script_leaves_what_a_simple_model_holds(long seed) {
    LogScript script = new LogScript(seed);
    EventLog log = open();
    try {
      for (int step = 0; step < 120; step++) {
        script.step(log);
        if (step % 20 == 19) {
          script.compareEarlierSnapshots();
          log = reopened(log);
          script.compare(log.snapshot());
        }
      }
      assertThat(script.commits()).as("commits with seed %d", seed).isGreaterThan(3);
    } finally {
      log.close();
    }
  }

  /** What happens to the log in the midst of a script: nothing, or closing and opening it. */
  protected EventLog reopened(EventLog log) {
    return log;
  }

  private Callable<List<Seen>> writes(EventLog log, int partition, List<ChipEvent> events) {
    return () -> {
      log.append(new Batch<>(Streams.CHIPS, partition, SampleMarkers.id(2), 0, events));
      return List.of();
    };
  }

  static <T> List<T> inParallel(List<Callable<T>> work) throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(4);
    try {
      List<T> results = new ArrayList<>();
      for (Future<T> future : threads.invokeAll(work, 2, TimeUnit.MINUTES)) {
        results.add(future.get());
      }
      return results;
    } finally {
      threads.shutdownNow();
    }
  }

  private static void assertClosed(Runnable call) {
    assertThatThrownBy(call::run)
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("The event log is closed");
  }

  private List<List<ChipEvent>> eachPartition(Importer importer) {
    return IntStream.range(0, CHIP_PARTITIONS)
        .mapToObj(
            p -> {
              List<ChipEvent> events = random.events(1 + p % 3);
              importer.append(p, events);
              return events;
            })
        .toList();
  }

  private static CaseEvent caseOpened() {
    CaseKey key =
        new CaseKey(
            "contact-behind",
            new Anchor.Chip(ChipNumber.parse("999000000112233")),
            new OrganisationId("cliff"),
            "P-1");
    return new CaseStep(key, CaseStep.Step.OPENED, LocalDate.of(2024, 3, 1), "run-2024-03-01");
  }

  private static <E> LogStream<E> watched(LogStream<E> stream, Consumer<List<E>> decoded) {
    ChunkCodec<E> watching =
        new ChunkCodec<>() {
          @Override
          public byte[] encode(List<E> events) {
            return stream.codec().encode(events);
          }

          @Override
          public void decode(byte[] chunk, Consumer<? super E> consumer) {
            List<E> events = new ArrayList<>();
            stream.codec().decode(chunk, events::add);
            decoded.accept(events);
            events.forEach(consumer);
          }
        };
    return new LogStream<>(stream.name(), stream.partitions(), watching);
  }
}
