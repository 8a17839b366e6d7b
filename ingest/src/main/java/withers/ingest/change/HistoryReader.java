package withers.ingest.change;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Slot;
import withers.id.RecordKey;
import withers.log.ImportMarker;

/** Rebuilds what a source has said so far from the log, by replaying this source's imports only. */
final class HistoryReader {

  private final Drafts drafts;
  private final Predicate<RecordKey> isWanted;
  private final Map<RecordKey, List<Integer>> unlisted = new HashMap<>();
  private final History history;

  private HistoryReader(Optional<Slot> windowSlot, Predicate<RecordKey> isWanted, History history) {
    this.drafts = new Drafts(windowSlot);
    this.isWanted = isWanted;
    this.history = history;
  }

  static History read(SourceLog log, Optional<Slot> windowSlot) {
    return read(log, new HistoryReader(windowSlot, key -> true, new History()));
  }

  /**
   * The history of these records alone; what was said of others is passed over. Empty when keys
   * were replaced: what was said under another key may then belong to one of these.
   */
  static Optional<History> read(SourceLog log, Optional<Slot> windowSlot, Set<RecordKey> keys) {
    History history = read(log, new HistoryReader(windowSlot, keys::contains, new History(keys)));
    return Optional.of(history).filter(some -> some.renames().isNone());
  }

  private static History read(SourceLog log, HistoryReader reader) {
    note(log, reader.history);
    log.replay(reader::take);
    return reader.finish();
  }

  /** The history of which each timeline is brought into memory when it is asked for. */
  static History read(SourceLog log, Remembered remembered) {
    History history = new History(remembered);
    note(log, history);
    return history;
  }

  private static void note(SourceLog log, History history) {
    for (ImportMarker marker : log.markers()) {
      history.snapshots().add(marker.exportDate(), marker.extent());
    }
  }

  /** The keys that were replaced; what is remembered of a source does not tell them. */
  static Renames renames(SourceLog log, History history) {
    if (history.isWhole()) {
      return history.renames();
    }
    Renames renames = new Renames();
    log.replay((event, marker) -> take(event, renames));
    return renames;
  }

  private static void take(ChipEvent event, Renames renames) {
    if (event.fact() instanceof Fact.Rekeyed rekeyed) {
      int day = (int) event.origin().exportDate().toEpochDay();
      renames.add(event.origin().key(), day, rekeyed.key());
    }
  }

  private void take(ChipEvent event, ImportMarker marker) {
    RecordKey key = event.origin().key();
    if (event.fact() instanceof Fact.Rekeyed) {
      take(event, history.renames());
    } else if (isWanted.test(key)) {
      gather(event, marker);
    }
  }

  private void gather(ChipEvent event, ImportMarker marker) {
    if (event.fact() instanceof Fact.NoLongerListed) {
      RecordKey key = event.origin().key();
      int day = (int) event.origin().exportDate().toEpochDay();
      unlisted.computeIfAbsent(key, k -> new ArrayList<>(1)).add(day);
    } else if (!(event.fact() instanceof Fact.Withdrawn)) {
      drafts.add(event, marker.id());
    }
  }

  private History finish() {
    drafts.drain(this::add);
    // A disappearance that stands beside a version of its own day is a consequence of that version.
    unlisted.forEach((key, days) -> days.forEach(day -> addAbsence(key, day)));
    return history;
  }

  private void add(RecordKey stated, List<Draft> drafts) {
    if (history.renames().isNone()) { // a key comes once then: there is nothing to look for
      keep(stated, new Timeline(), drafts);
      return;
    }
    Map<RecordKey, List<Draft>> byKey = new LinkedHashMap<>();
    for (Draft draft : drafts) {
      RecordKey key = history.renames().current(stated, draft.day());
      byKey.computeIfAbsent(key, k -> new ArrayList<>(1)).add(draft);
    }
    byKey.forEach((key, some) -> keep(key, history.timeline(key), some));
  }

  private void keep(RecordKey key, Timeline timeline, List<Draft> drafts) {
    for (Draft draft : drafts) {
      if (!timeline.has(draft.day(), draft.version())) {
        timeline.add(draft.day(), draft.version());
      }
    }
    history.keep(key, timeline);
  }

  private void addAbsence(RecordKey stated, int day) {
    RecordKey key = history.renames().current(stated, day);
    Timeline timeline = history.timeline(key);
    if (!timeline.speaksAt(day)) {
      timeline.add(day, Version.ABSENT);
      history.keep(key, timeline);
    }
  }
}
