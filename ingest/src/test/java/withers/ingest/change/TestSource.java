package withers.ingest.change;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
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
  private int byKeys;

  TestSource(Disappearance disappearance) {
    this.disappearance = disappearance;
  }

  /** Imports an export whose rows come in this order, and returns how many events it took. */
  int take(ModelExport model, List<Integer> order) {
    Export export =
        new Export(ID, model.date(), model.extent(), Optional.of(Slot.INTAKE), disappearance);
    List<ChipEvent> events = new ArrayList<>();
    ChangeDetector detector = new ChangeDetector(log.snapshot(), export, events::add);
    take(detector, model, order);
    withheld = detector.withheld(new TreeSet<>());
    requireTheSameByKeys(export, model, order, events);
    commit(model, events);
    return events.size();
  }

  private static void take(ChangeDetector detector, ModelExport model, List<Integer> order) {
    for (int i = 0; i < order.size(); i++) {
      take(detector, model, model.rows().get(order.get(i)), new Locator(0, i + 2));
    }
    detector.conclude();
  }

  /** Who knows only what was said of the records that an export states finds the same. */
  private void requireTheSameByKeys(
      Export export, ModelExport model, List<Integer> order, List<ChipEvent> events) {
    Set<RecordKey> keys =
        model.rows().stream().map(row -> new RecordKey(row.key())).collect(Collectors.toSet());
    Optional<Rebuilt> some = Rebuilt.of(log.snapshot(), export, keys);
    if (some.isPresent()) {
      byKeys++;
      List<ChipEvent> found = new ArrayList<>();
      ChangeDetector detector = new ChangeDetector(log.snapshot(), export, some.get(), found::add);
      take(detector, model, order);
      assertThat(found).as("events by the keys alone").isEqualTo(events);
      assertThat(detector.withheld(new TreeSet<>())).as("by the keys alone").isEqualTo(withheld);
    }
  }

  /** How many exports were also compared with what was said of their own records alone. */
  int byKeys() {
    return byKeys;
  }

  private static void take(ChangeDetector detector, ModelExport model, Row row, Locator locator) {
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

  MemoryEventLog log() {
    return log;
  }

  LogSnapshot snapshot() {
    return log.snapshot();
  }
}
