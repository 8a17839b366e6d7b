package withers.log;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.UUID;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.source.Extent;

/** Import markers for tests, all invented. */
public final class SampleMarkers {

  private SampleMarkers() {}

  /** An import id that is the same for the same number. */
  public static ImportId id(long number) {
    return new ImportId(new UUID(0x4000L, 0x8000000000000000L | number));
  }

  /** A marker of an import from one file. */
  public static ImportMarker marker(ImportId id, Optional<ImportId> parent, String chain) {
    return new ImportMarker(
        id,
        parent,
        new SourceId(chain),
        Optional.empty(),
        LocalDate.of(2024, 3, 1),
        new Extent.Full(),
        List.of(new ImportMarker.FileRead("export.csv", "00".repeat(32), 3, "11".repeat(32))),
        new Tally(3, 1, 1, 1, 0, 2),
        new TreeSet<>(),
        new TreeSet<>(),
        Instant.parse("2024-03-02T04:00:00Z"));
  }

  /** The next marker of a chain, of an import of so many events that read no file. */
  public static ImportMarker next(
      EventLog log, ImportId id, SourceId chain, LocalDate day, int events) {
    return new ImportMarker(
        id,
        log.snapshot().newest(chain).map(ImportMarker::id),
        chain,
        Optional.empty(),
        day,
        new Extent.Changes(),
        List.of(),
        new Tally(0, 0, 0, 0, 0, events),
        new TreeSet<>(),
        new TreeSet<>(),
        Instant.EPOCH);
  }
}
