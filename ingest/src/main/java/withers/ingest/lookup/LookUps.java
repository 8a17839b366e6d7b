package withers.ingest.lookup;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.Locator;
import withers.fact.Origin;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.id.ImportId;
import withers.id.OrganisationId;
import withers.id.RecordKey;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.StaleParentException;
import withers.log.Tally;
import withers.source.Coverage;
import withers.source.Coverage.Reach;
import withers.source.Extent;
import withers.source.OwnSources;
import withers.source.SourceDescription;
import withers.source.SourceKind;

/**
 * Records look-ups: each as a record and an import of its own. Of several about one number,
 * registry and day the one recorded last counts, so a wrong answer is put right by recording again.
 * Keys count up with the imports of this source, and the natural order of keys decides.
 */
public final class LookUps {

  private static final int ATTEMPTS = 3;

  private final EventLog log;
  private final OrganisationId coordinator;
  private final Clock clock;
  private final Supplier<ImportId> ids;

  /**
   * @param coordinator whose records look-ups are
   * @param clock in the workspace's zone; tells when a look-up is recorded
   * @param ids gives a fresh id for each attempt
   */
  public LookUps(EventLog log, OrganisationId coordinator, Clock clock, Supplier<ImportId> ids) {
    this.log = log;
    this.coordinator = coordinator;
    this.clock = clock;
    this.ids = ids;
  }

  /**
   * Records a look-up, unless the last one about the same number, registry and day says the same.
   *
   * @return what was known of the number before
   * @throws StaleParentException when others were faster again and again; nothing was changed
   */
  public KnownBefore record(LookUp lookUp) {
    for (int attempt = 1; ; attempt++) {
      try {
        return attempt(lookUp);
      } catch (StaleParentException stale) {
        if (attempt == ATTEMPTS) {
          throw stale;
        }
      }
    }
  }

  private KnownBefore attempt(LookUp lookUp) {
    LogSnapshot snapshot = log.snapshot();
    KnownBefore before = KnownBefore.read(snapshot, lookUp);
    if (!before.says(lookUp)) {
      write(event(lookUp, snapshot), snapshot);
    }
    return before;
  }

  private ChipEvent event(LookUp lookUp, LogSnapshot snapshot) {
    long earlier =
        snapshot.markers().stream().filter(m -> m.chain().equals(OwnSources.LOOK_UPS)).count();
    RecordKey key = new RecordKey(String.format(Locale.ROOT, "L%06d", earlier + 1));
    return new ChipEvent(
        new Subject.Chip(lookUp.chip()),
        new Origin(OwnSources.LOOK_UPS, key, Slot.LOOK_UP, today(), new Locator(0, 0)),
        Optional.of(lookUp.day()),
        lookUp.fact());
  }

  private LocalDate today() {
    return LocalDate.now(clock);
  }

  private void write(ChipEvent event, LogSnapshot snapshot) {
    ImportId id = ids.get();
    Streams.Place place = Streams.placeOf(event);
    log.append(new Batch<>(place.stream(), place.partition(), id, 0, List.of(event)));
    log.commit(
        new ImportMarker(
            id,
            snapshot.newest(OwnSources.LOOK_UPS).map(ImportMarker::id),
            OwnSources.LOOK_UPS,
            Optional.of(description()),
            today(),
            new Extent.Changes(),
            List.of(),
            new Tally(1, 1, 0, 0, 0, 1),
            new TreeSet<>(),
            new TreeSet<>(),
            clock.instant()));
  }

  /** A slice, so that its silence never means anything. */
  private SourceDescription description() {
    return new SourceDescription(
        OwnSources.LOOK_UPS,
        coordinator,
        SourceKind.LOST_AND_FOUND,
        new Coverage(Reach.ACCOUNT, List.of(), Optional.empty(), Set.of()));
  }
}
