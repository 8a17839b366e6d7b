package withers.report;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import withers.id.ImportId;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.log.ImportMarker;
import withers.log.Tally;
import withers.source.Coverage;
import withers.source.Extent;
import withers.source.SourceDescription;
import withers.source.SourceKind;

/** Markers of imports, for tests. */
public final class Imports {
  private Imports() {}

  /** An import of an organisation's only source, with disappearances and exports withheld. */
  public static ImportMarker of(
      OrganisationId organisation, String export, long disappeared, String... withheld) {
    SourceId source = new SourceId(organisation.value() + "-all");
    Coverage coverage = new Coverage(Coverage.Reach.WHOLE, List.of(), Optional.empty(), Set.of());
    return new ImportMarker(
        new ImportId(new UUID(organisation.hashCode(), export.hashCode())),
        Optional.empty(),
        source,
        Optional.of(
            new SourceDescription(source, organisation, SourceKind.CLINIC_PATIENTS, coverage)),
        LocalDate.parse(export),
        new Extent.Full(),
        List.of(),
        new Tally(10, 10, 0, 0, disappeared, 10),
        new TreeSet<>(Stream.of(withheld).map(LocalDate::parse).toList()),
        new TreeSet<>(),
        Instant.EPOCH);
  }

  /** The marker of a run's follow-ups: no source sent it. */
  public static ImportMarker ofARun(String day) {
    ImportMarker marker = of(Coast.COORDINATOR, day, 0);
    return new ImportMarker(
        marker.id(),
        Optional.empty(),
        new SourceId("follow-ups"),
        Optional.empty(),
        marker.exportDate(),
        marker.extent(),
        List.of(),
        Tally.NOTHING,
        new TreeSet<>(),
        new TreeSet<>(),
        Instant.EPOCH);
  }
}
