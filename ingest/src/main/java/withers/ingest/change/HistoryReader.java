package withers.ingest.change;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Slot;
import withers.id.ImportId;
import withers.id.RecordKey;
import withers.log.ImportMarker;

/** Rebuilds what a source has said so far from the log, by replaying this source's imports only. */
final class HistoryReader {

  private final Optional<Slot> windowSlot;
  private final Map<RecordKey, List<Draft>> drafts = new HashMap<>();
  private final Map<RecordKey, List<Integer>> unlisted = new HashMap<>();
  private final History history = new History();

  private HistoryReader(Optional<Slot> windowSlot) {
    this.windowSlot = windowSlot;
  }

  static History read(SourceLog log, Optional<Slot> windowSlot) {
    HistoryReader reader = new HistoryReader(windowSlot);
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
    int day = (int) event.origin().exportDate().toEpochDay();
    if (event.fact() instanceof Fact.Rekeyed) {
      take(event, history.renames());
    } else if (event.fact() instanceof Fact.NoLongerListed) {
      unlisted.computeIfAbsent(key, k -> new ArrayList<>(1)).add(day);
    } else if (!(event.fact() instanceof Fact.Withdrawn)) {
      draft(key, marker.id(), event).add(event);
    }
  }

  private Draft draft(RecordKey key, ImportId importId, ChipEvent event) {
    List<Draft> ofRecord = drafts.computeIfAbsent(key, k -> new ArrayList<>(1));
    for (int i = ofRecord.size() - 1; i >= 0; i--) {
      if (ofRecord.get(i).takes(importId, event)) {
        return ofRecord.get(i);
      }
    }
    Draft draft = new Draft(importId, event, windowSlot);
    ofRecord.add(draft);
    return draft;
  }

  private History finish() {
    drafts.forEach(
        (key, ofRecord) ->
            ofRecord.forEach(d -> add(timeline(key, d.day()), d.day(), d.version())));
    // A disappearance that stands beside a version of its own day is a consequence of that version.
    unlisted.forEach((key, days) -> days.forEach(day -> addAbsence(timeline(key, day), day)));
    return history;
  }

  private Timeline timeline(RecordKey key, int day) {
    return history.timeline(history.renames().current(key, day));
  }

  private static void add(Timeline timeline, int day, Version version) {
    if (!timeline.has(day, version)) {
      timeline.add(day, version);
    }
  }

  private static void addAbsence(Timeline timeline, int day) {
    if (!timeline.speaksAt(day)) {
      timeline.add(day, Version.ABSENT);
    }
  }
}
