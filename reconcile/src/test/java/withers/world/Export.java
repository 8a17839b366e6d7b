package withers.world;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Origin;
import withers.id.ImportId;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.Tally;
import withers.source.Coverage;
import withers.source.Coverage.Reach;
import withers.source.Extent;
import withers.source.SourceDescription;
import withers.source.SourceKind;

/**
 * What one source said on one date.
 *
 * @param source its organisation's id, with a dash and more when an organisation has several:
 *     {@code south-slice} is one account's slice of the south; {@code north-filled} declares to
 *     fill in phones, e-mail and scans
 * @param withheld dates of this source whose disappearances are withheld, as known after it
 */
public record Export(
    SourceId source,
    LocalDate date,
    Extent extent,
    Set<LocalDate> withheld,
    Set<LocalDate> confirmed,
    List<ChipEvent> events) {

  public Export {
    withheld = Set.copyOf(withheld);
    confirmed = Set.copyOf(confirmed);
    events = List.copyOf(events);
  }

  static Export full(SourceId source, LocalDate date, List<ChipEvent> events) {
    return new Export(source, date, new Extent.Full(), Set.of(), Set.of(), events);
  }

  /** The same export with other events. */
  public Export with(List<ChipEvent> others) {
    return new Export(source, date, extent, withheld, confirmed, others);
  }

  /** The same, with all that an earlier one says of slots of which this one says nothing. */
  public Export restating(Export earlier) {
    List<ChipEvent> all = new ArrayList<>();
    earlier.lastingUpTo(this).map(event -> restated(event)).forEach(all::add);
    all.addAll(events);
    return with(all);
  }

  /** The events of slots of which a later one says nothing. */
  public Stream<ChipEvent> lastingUpTo(Export later) {
    return events.stream()
        .filter(event -> later.events.stream().noneMatch(n -> isOfSlot(n, event)));
  }

  private static boolean isOfSlot(ChipEvent one, ChipEvent other) {
    return one.subject().equals(other.subject())
        && one.origin().key().equals(other.origin().key())
        && one.origin().slot() == other.origin().slot();
  }

  private ChipEvent restated(ChipEvent event) {
    Origin said = event.origin();
    Origin again = new Origin(source, said.key(), said.slot(), date, said.locator());
    return new ChipEvent(event.subject(), again, event.date(), event.fact());
  }

  Export withholding(LocalDate day) {
    return new Export(source, date, extent, Set.of(day), confirmed, events);
  }

  Export confirming(LocalDate day) {
    return new Export(source, date, extent, withheld, Set.of(day), events);
  }

  /** Imports it in batches of a size, with a marker at the end. */
  public void importInto(EventLog log, UUID id, int batchSize) {
    ImportId importId = new ImportId(id);
    Batches batches = new Batches(log, importId, batchSize);
    events.forEach(batches::add);
    batches.flush();
    log.commit(marker(importId, log));
  }

  private ImportMarker marker(ImportId id, EventLog log) {
    return new ImportMarker(
        id,
        log.snapshot().newest(source).map(ImportMarker::id),
        source,
        Optional.of(description()),
        date,
        extent,
        isRekeying()
            ? List.of()
            : List.of(new ImportMarker.FileRead(source + ".csv", "0", events.size(), "0")),
        new Tally(0, 0, 0, 0, 0, events.size()),
        new TreeSet<>(withheld),
        new TreeSet<>(confirmed),
        Instant.EPOCH);
  }

  /** No file is read when an operator confirms that records have new keys. */
  private boolean isRekeying() {
    return !events.isEmpty() && events.stream().allMatch(e -> e.fact() instanceof Fact.Rekeyed);
  }

  private SourceDescription description() {
    String organisation = source.value().split("-")[0];
    Reach reach = source.value().endsWith("-slice") ? Reach.ACCOUNT : Reach.WHOLE;
    return new SourceDescription(
        source,
        new OrganisationId(organisation),
        kind(organisation),
        new Coverage(reach, List.of(), Optional.empty(), filled()));
  }

  private Set<String> filled() {
    return source.value().endsWith("-filled") ? Set.of("phones", "emails", "scans") : Set.of();
  }

  private static SourceKind kind(String organisation) {
    return switch (organisation) {
      case "north", "south" -> SourceKind.REGISTRY_CONTACTS;
      case "shelter", "cattery" -> SourceKind.SHELTER_MOVEMENTS;
      case "kennels" -> SourceKind.SELLER_SALES;
      case "works" -> SourceKind.CHIP_SUPPLY;
      case "desk" -> SourceKind.LOST_AND_FOUND;
      default -> SourceKind.CLINIC_PATIENTS;
    };
  }

  /** The chips that it speaks of. */
  public Collection<ChipNumber> chips() {
    return events.stream().flatMap(event -> event.subject().chip().stream()).distinct().toList();
  }

  /** Batches being filled, one for each place. */
  private static final class Batches {
    private final java.util.Map<Streams.Place, List<ChipEvent>> filling = new java.util.HashMap<>();
    private final java.util.Map<Streams.Place, Integer> written = new java.util.HashMap<>();
    private final EventLog log;
    private final ImportId id;
    private final int size;

    Batches(EventLog log, ImportId id, int size) {
      this.log = log;
      this.id = id;
      this.size = size;
    }

    void add(ChipEvent event) {
      Streams.Place place = Streams.placeOf(event);
      List<ChipEvent> batch = filling.computeIfAbsent(place, p -> new java.util.ArrayList<>());
      batch.add(event);
      if (batch.size() == size) {
        write(place);
      }
    }

    void flush() {
      List.copyOf(filling.keySet()).forEach(this::write);
    }

    private void write(Streams.Place place) {
      List<ChipEvent> events = filling.remove(place);
      int sequence = written.merge(place, 1, Integer::sum) - 1;
      log.append(new Batch<>(place.stream(), place.partition(), id, sequence, events));
    }
  }
}
