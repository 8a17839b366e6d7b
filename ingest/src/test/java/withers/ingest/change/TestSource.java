package withers.ingest.change;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import java.util.UUID;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.Locator;
import withers.fact.Origin;
import withers.fact.Slot;
import withers.id.ImportId;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.ingest.change.ModelExport.Row;
import withers.ingest.change.ModelExport.Said;
import withers.log.Batch;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.Tally;
import withers.log.memory.MemoryEventLog;

/** A source whose invented exports are imported into a log in memory. */
final class TestSource {

  static final SourceId ID = new SourceId("harbour-clinic");

  private final MemoryEventLog log = new MemoryEventLog();
  private final Disappearance disappearance;
  private NavigableSet<LocalDate> withheld = new TreeSet<>();
  private int imports;

  TestSource(Disappearance disappearance) {
    this.disappearance = disappearance;
  }

  /** Imports an export whose rows come in this order, and returns how many events it took. */
  int take(ModelExport model, List<Integer> order) {
    Export export =
        new Export(ID, model.date(), model.extent(), Optional.of(Slot.INTAKE), disappearance);
    List<ChipEvent> events = new ArrayList<>();
    ChangeDetector detector = new ChangeDetector(log.snapshot(), export, events::add);
    for (int i = 0; i < order.size(); i++) {
      take(detector, model, model.rows().get(order.get(i)), new Locator(0, i + 2));
    }
    detector.conclude();
    withheld = detector.withheld(new TreeSet<>());
    commit(model, events);
    return events.size();
  }

  private void take(ChangeDetector detector, ModelExport model, Row row, Locator locator) {
    RecordKey key = new RecordKey(row.key());
    if (row.isUnreadable()) {
      detector.unreadable(key, locator);
    } else {
      detector.row(key, row.said().stream().map(s -> event(model, key, s, locator)).toList());
    }
  }

  private static ChipEvent event(ModelExport model, RecordKey key, Said said, Locator locator) {
    Origin origin = new Origin(ID, key, said.slot(), model.date(), locator);
    return new ChipEvent(said.subject(), origin, said.date(), said.fact());
  }

  private void commit(ModelExport model, List<ChipEvent> events) {
    ImportId id =
        new ImportId(
            UUID.nameUUIDFromBytes(("import " + imports++).getBytes(StandardCharsets.UTF_8)));
    Map<Streams.Place, List<ChipEvent>> byPlace = new HashMap<>();
    events.forEach(e -> byPlace.computeIfAbsent(Streams.placeOf(e), p -> new ArrayList<>()).add(e));
    byPlace.forEach(
        (place, list) -> log.append(new Batch<>(place.stream(), place.partition(), id, 0, list)));
    log.commit(
        new ImportMarker(
            id,
            log.snapshot().newest(ID).map(ImportMarker::id),
            ID,
            Optional.empty(),
            model.date(),
            model.extent(),
            List.of(),
            Tally.NOTHING,
            withheld,
            new TreeSet<>(),
            Instant.EPOCH));
  }

  NavigableSet<LocalDate> withheld() {
    return withheld;
  }

  LogSnapshot snapshot() {
    return log.snapshot();
  }
}
