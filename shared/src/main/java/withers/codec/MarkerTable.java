package withers.codec;

import static withers.codec.WireType.CHIP;
import static withers.codec.WireType.DAY;
import static withers.codec.WireType.ORGANISATION;
import static withers.codec.WireType.SOURCE;
import static withers.codec.WireType.TEXT;
import static withers.codec.WireType.oneOf;
import static withers.codec.WireType.shapeOf;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.UUID;
import withers.chip.NumberRange;
import withers.id.ImportId;
import withers.log.ImportMarker;
import withers.log.Tally;
import withers.source.Coverage;
import withers.source.Extent;
import withers.source.SourceDescription;
import withers.source.SourceKind;

/** The wire table's part for import markers. The same rules hold: never edit a released line. */
final class MarkerTable {

  private MarkerTable() {}

  static final Constants<SourceKind> SOURCE_KINDS =
      Constants.of("source kind", SourceKind.class)
          .put(1, "clinic-patients", SourceKind.CLINIC_PATIENTS)
          .put(2, "shelter-movements", SourceKind.SHELTER_MOVEMENTS)
          .put(3, "seller-sales", SourceKind.SELLER_SALES)
          .put(4, "chip-supply", SourceKind.CHIP_SUPPLY)
          .put(5, "registry-contacts", SourceKind.REGISTRY_CONTACTS)
          .put(6, "lost-and-found", SourceKind.LOST_AND_FOUND);

  static final Constants<Coverage.Reach> REACHES =
      Constants.of("reach", Coverage.Reach.class)
          .put(1, "whole", Coverage.Reach.WHOLE)
          .put(2, "account", Coverage.Reach.ACCOUNT);

  static final List<Constants<?>> CONSTANTS = List.of(SOURCE_KINDS, REACHES);

  private static final WireType<Long> NUMBER = WireType.of(WireOutput::number, WireInput::number);
  private static final WireType<ImportId> IMPORT =
      WireType.of(
          (out, id) -> out.text(id.toString()), in -> new ImportId(UUID.fromString(in.text())));
  private static final WireType<Instant> INSTANT =
      WireType.of((out, time) -> out.text(time.toString()), in -> Instant.parse(in.text()));
  private static final WireType<SortedSet<LocalDate>> DAYS =
      WireType.of(
          (out, days) -> out.list(List.copyOf(days), DAY), in -> new TreeSet<>(in.list(DAY)));
  private static final WireType<Set<String>> NAMES =
      WireType.of(
          (out, names) -> out.list(names.stream().sorted().toList(), TEXT),
          in -> Set.copyOf(in.list(TEXT)));

  static final Family<Extent> EXTENTS =
      Family.of(
          "extent",
          Extent.class,
          Shape.of(1, "full", Extent.Full.class).makes(v -> new Extent.Full()),
          Shape.of(2, "window", Extent.Window.class)
              .field("from", DAY, Extent.Window::from)
              .field("to", DAY, Extent.Window::to)
              .makes(v -> new Extent.Window(v.at(0), v.at(1))),
          Shape.of(3, "changes", Extent.Changes.class).makes(v -> new Extent.Changes()));

  static final Family<NumberRange> RANGES =
      Family.of(
          "number-range",
          NumberRange.class,
          Shape.of(1, "number-range", NumberRange.class)
              .field("first", CHIP, NumberRange::first)
              .field("last", CHIP, NumberRange::last)
              .makes(v -> new NumberRange(v.at(0), v.at(1))));

  static final Family<Coverage> COVERAGES =
      Family.of(
          "coverage",
          Coverage.class,
          Shape.of(1, "coverage", Coverage.class)
              .field("reach", oneOf(REACHES), Coverage::reach)
              .field("ranges", shapeOf(RANGES).list(), Coverage::ranges)
              .field("completeUpTo", DAY.optional(), Coverage::completeUpTo)
              .field("filled", NAMES, Coverage::filled)
              .makes(v -> new Coverage(v.at(0), v.at(1), v.at(2), v.at(3))));

  static final Family<SourceDescription> SOURCES =
      Family.of(
          "source",
          SourceDescription.class,
          Shape.of(1, "source", SourceDescription.class)
              .field("id", SOURCE, SourceDescription::id)
              .field("organisation", ORGANISATION, SourceDescription::organisation)
              .field("kind", oneOf(SOURCE_KINDS), SourceDescription::kind)
              .field("coverage", shapeOf(COVERAGES), SourceDescription::coverage)
              .makes(v -> new SourceDescription(v.at(0), v.at(1), v.at(2), v.at(3))));

  static final Family<ImportMarker.FileRead> FILES =
      Family.of(
          "file",
          ImportMarker.FileRead.class,
          Shape.of(1, "file", ImportMarker.FileRead.class)
              .field("name", TEXT, ImportMarker.FileRead::name)
              .field("sha256", TEXT, ImportMarker.FileRead::sha256)
              .field("rows", NUMBER, ImportMarker.FileRead::rows)
              .field("profile", TEXT, ImportMarker.FileRead::profile)
              .makes(v -> new ImportMarker.FileRead(v.at(0), v.at(1), v.at(2), v.at(3))));

  static final Family<Tally> TALLIES =
      Family.of(
          "tally",
          Tally.class,
          Shape.of(1, "tally", Tally.class)
              .field("read", NUMBER, Tally::read)
              .field("applied", NUMBER, Tally::applied)
              .field("unchanged", NUMBER, Tally::unchanged)
              .field("rejected", NUMBER, Tally::rejected)
              .field("disappeared", NUMBER, Tally::disappeared)
              .field("events", NUMBER, Tally::events)
              .makes(v -> new Tally(v.at(0), v.at(1), v.at(2), v.at(3), v.at(4), v.at(5))));

  static final Family<ImportMarker> MARKERS =
      Family.of(
          "marker",
          ImportMarker.class,
          Shape.of(1, "marker", ImportMarker.class)
              .field("id", IMPORT, ImportMarker::id)
              .field("parent", IMPORT.optional(), ImportMarker::parent)
              .field("chain", SOURCE, ImportMarker::chain)
              .field("source", shapeOf(SOURCES).optional(), ImportMarker::source)
              .field("exportDate", DAY, ImportMarker::exportDate)
              .field("extent", shapeOf(EXTENTS), ImportMarker::extent)
              .field("files", shapeOf(FILES).list(), ImportMarker::files)
              .field("tally", shapeOf(TALLIES), ImportMarker::tally)
              .field("withheld", DAYS, ImportMarker::withheld)
              .field("confirmed", DAYS, ImportMarker::confirmed)
              .field("recordedAt", INSTANT, ImportMarker::recordedAt)
              .makes(MarkerTable::marker));

  static final List<Family<?>> FAMILIES =
      List.of(EXTENTS, RANGES, COVERAGES, SOURCES, FILES, TALLIES, MARKERS);

  private static ImportMarker marker(Values v) {
    return new ImportMarker(
        v.at(0), v.at(1), v.at(2), v.at(3), v.at(4), v.at(5), v.at(6), v.at(7), v.at(8), v.at(9),
        v.at(10));
  }
}
