package withers.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import org.junit.jupiter.api.Test;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.RandomEvents;
import withers.id.ImportId;
import withers.id.SourceId;

/**
 * What a log promises besides when it keeps its events beyond the program: {@link #open} gives
 * another instance of the same log at every call, also while earlier ones are open.
 */
public abstract class DurableEventLogContract extends EventLogContract {

  private final RandomEvents random = new RandomEvents(19990131);

  @Override
  protected EventLog reopened(EventLog log) {
    log.close();
    return open();
  }

  @Test
  void committed_imports_outlast_the_log() {
    List<ChipEvent> events = random.events(3_000);
    ImportMarker marker;
    try (EventLog log = open()) {
      marker = new Importer(log, "alpha", 1).append(7, events).commit();
    }
    try (EventLog log = open()) {
      assertThat(log.snapshot().markers()).containsExactly(marker);
      assertThat(Seen.in(log.snapshot(), Streams.CHIPS, 7)).isEqualTo(Seen.by(marker.id(), events));
    }
  }

  @Test
  void leftovers_of_a_killed_import_stay_invisible_and_can_be_swept() {
    ImportMarker marker;
    try (EventLog log = open()) {
      new Importer(log, "alpha", 1).append(0, random.events(10)).append(1, random.events(10));
    }
    try (EventLog log = open()) {
      marker = new Importer(log, "alpha", 2).append(0, random.events(1)).commit();
      assertThat(Seen.in(log.snapshot(), Streams.CHIPS, 0)).hasSize(1);
      assertThat(Seen.in(log.snapshot(), Streams.CHIPS, 1)).isEmpty();
      assertThat(log.sweep()).isEqualTo(2);
    }
    try (EventLog log = open()) {
      assertThat(log.snapshot().markers()).containsExactly(marker);
      assertThat(log.sweep()).isZero();
      assertThat(Seen.in(log.snapshot(), Streams.CHIPS, 0)).hasSize(1);
    }
  }

  @Test
  void a_marker_committed_elsewhere_makes_a_parent_stale() {
    try (EventLog here = open();
        EventLog there = open()) {
      ImportMarker base = new Importer(here, "alpha", 1).append(0, random.events(1)).commit();
      Importer slow = new Importer(here, "alpha", 2).append(0, random.events(1));
      ImportMarker quick = new Importer(there, "alpha", 3).append(0, random.events(1)).commit();
      assertThatThrownBy(() -> slow.commitAfter(Optional.of(base.id())))
          .isInstanceOf(StaleParentException.class);
      assertThat(there.snapshot().markers()).containsExactly(base, quick);
      assertThat(here.snapshot().markers()).containsExactly(base, quick);
      ImportMarker repeated = slow.commitAfter(Optional.of(quick.id()));
      assertThat(there.snapshot().markers()).containsExactly(base, quick, repeated);
    }
  }

  @Test
  void of_many_that_commit_at_once_one_wins() throws Exception {
    try (EventLog here = open();
        EventLog there = open()) {
      for (int round = 0; round < 10; round++) {
        Optional<ImportMarker> before = here.snapshot().newest(new SourceId("alpha"));
        CyclicBarrier start = new CyclicBarrier(4);
        List<Callable<Boolean>> rivals = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
          Importer rival = new Importer(i % 2 == 0 ? here : there, "alpha", 10 * round + i);
          rivals.add(
              () -> {
                rival.append(0, List.of());
                start.await();
                return wins(rival, before.map(ImportMarker::id));
              });
        }
        assertThat(inParallel(rivals)).as("round %d", round).containsOnlyOnce(true);
        assertThat(there.snapshot().markers()).hasSize(round + 1);
      }
    }
  }

  private static boolean wins(Importer rival, Optional<ImportId> parent) {
    try {
      rival.commitAfter(parent);
      return true;
    } catch (StaleParentException expected) {
      assertThat(expected).hasMessageContaining("alpha");
      return false;
    }
  }
}
