package withers.ingest;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.ingest.profile.SourceProfile;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.Tally;
import withers.source.Extent;
import withers.source.InputRefusedException;

/** Takes an operator's word that what an export misses is really no longer listed. */
public final class Confirmation {

  private Confirmation() {}

  /**
   * Confirms the withheld disappearances of an export date.
   *
   * @throws InputRefusedException when none of that date are withheld
   */
  public static void confirm(
      EventLog log,
      SourceProfile profile,
      LocalDate exportDate,
      Clock clock,
      Supplier<ImportId> ids) {
    Optional<ImportMarker> newest = log.snapshot().newest(profile.id());
    SortedSet<LocalDate> withheld =
        new TreeSet<>(newest.map(ImportMarker::withheld).orElseGet(TreeSet::new));
    if (!withheld.remove(exportDate)) {
      throw refused(profile.id(), exportDate, withheld);
    }
    SortedSet<LocalDate> confirmed =
        new TreeSet<>(newest.map(ImportMarker::confirmed).orElseGet(TreeSet::new));
    confirmed.add(exportDate);
    log.commit(
        new ImportMarker(
            ids.get(),
            newest.map(ImportMarker::id),
            profile.id(),
            Optional.of(profile.describe(exportDate)),
            exportDate,
            new Extent.Changes(),
            List.of(),
            Tally.NOTHING,
            withheld,
            confirmed,
            clock.instant()));
  }

  private static InputRefusedException refused(
      SourceId source, LocalDate found, SortedSet<LocalDate> withheld) {
    String dates =
        withheld.isEmpty()
            ? "none are"
            : withheld.stream().map(LocalDate::toString).collect(Collectors.joining(", "));
    return new InputRefusedException(
        "Expected an export date of %s whose disappearances are withheld (%s), but found %s. Nothing was changed."
            .formatted(source, dates, found));
  }
}
