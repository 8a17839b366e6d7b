package withers.ingest;

import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.ingest.change.ChangeDetector;
import withers.ingest.change.Disappearances;
import withers.ingest.change.Rekeying;
import withers.ingest.file.ExportFile;
import withers.ingest.known.Recognised;
import withers.ingest.quarantine.QuarantineFile;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.Tally;
import withers.point.Point;
import withers.point.Points;
import withers.source.InputRefusedException;

/** One attempt to bring an export into the log, compared with the log as it was at its start. */
final class ImportAttempt {

  private final ExportSet set;
  private final LogSnapshot snapshot;
  private final ImportId id;
  private final Intake intake;
  private final Path quarantine;
  private final Clock clock;
  private final Points points;
  private final Optional<Recognised> recognised;
  private final Keeping keeping;
  private final BatchWriter writer;
  private final ChangeDetector detector;
  private final List<String> remarks = new ArrayList<>();
  private Map<String, Long> joinedRows = Map.of();
  private long read;

  /**
   * @param intake what takes the rows, or has taken them
   */
  ImportAttempt(
      ExportSet set,
      LogSnapshot snapshot,
      ImportId id,
      Intake intake,
      Path quarantine,
      Clock clock,
      Points points,
      Optional<Recognised> recognised,
      Keeping keeping) {
    this.set = set;
    this.snapshot = snapshot;
    this.id = id;
    this.intake = intake;
    this.quarantine = quarantine;
    this.clock = clock;
    this.points = points;
    this.recognised = recognised;
    this.keeping = keeping;
    this.writer = intake.writer();
    this.detector = intake.detector();
  }

  /** Takes the rows, unless they were taken when they were read. */
  void read(RowSource rows) {
    recognised.ifPresent(known -> known.expected().forEach(detector::expect));
    if (rows.taken().isEmpty()) {
      rows.read(intake::take);
    }
    read = intake.rows() + set.files().stream().mapToLong(rows::recognised).sum();
    remarks.addAll(rows.remarks());
    joinedRows = rows.joinedRows();
  }

  /** Records that come under new keys would else be taken for new ones beside the old. */
  void requireOldKeys() {
    Rekeying rekeying = detector.rekeying();
    if (rekeying.isLikely()) {
      throw new InputRefusedException(
          String.format(
              Locale.ROOT,
              "Expected records under the keys that they had, but found %,d of %,d missing records under new ones (%s): look at them with withers rekey, which also confirms them; if they are other records, give --new-records. Nothing was changed.",
              rekeying.pairs().size(),
              rekeying.missing(),
              set.names()));
    }
  }

  ImportReport finish(EventLog log, Map<String, Long> rows) {
    requireUnchangedFiles(rows);
    writer.release();
    long missing = detector.conclude();
    NavigableSet<LocalDate> confirmed = confirmed();
    NavigableSet<LocalDate> withheld = detector.withheld(confirmed);
    Tally tally = tally(missing);
    if (isNothingNew(withheld)) {
      writer.storeContacts();
      Optional<Path> file = writeQuarantine();
      keeping.prepare(detector);
      Optional<String> notKept = keeping.keep(newest().map(ImportMarker::id).orElse(id), date());
      return report(ImportReport.Result.NOTHING_NEW, tally, file, withheld, rows, notKept);
    }
    writer.flush(() -> keeping.prepare(detector));
    points.reached(Point.IMPORT_AFTER_LAST_BATCH);
    Optional<Path> file = writeQuarantine();
    points.reached(Point.IMPORT_AFTER_QUARANTINE);
    ImportMarker marker = marker(rows, tally, withheld, confirmed);
    points.reached(Point.IMPORT_BEFORE_MARKER);
    log.commit(marker);
    points.reached(Point.IMPORT_AFTER_MARKER);
    Optional<String> notKept = keeping.keep(id, date());
    return report(ImportReport.Result.IMPORTED, tally, file, withheld, rows, notKept);
  }

  private LocalDate date() {
    return set.exportDate();
  }

  private void requireUnchangedFiles(Map<String, Long> rows) {
    if (rows.values().stream().mapToLong(count -> count).sum() != read) {
      throw new InputRefusedException(
          "Expected files that stay as they are, but found them changed while they were read (%s): try again. Nothing was changed."
              .formatted(set.names()));
    }
  }

  private Tally tally(long missing) {
    long applied = intake.applied();
    long refused = intake.refused();
    long unchanged = read - applied - refused;
    return new Tally(read, applied, unchanged, refused, missing, writer.count());
  }

  /**
   * Of a date and extent that the log knows, a marker would say nothing; nor would one of rows that
   * nobody has put right yet.
   */
  private boolean isNothingNew(NavigableSet<LocalDate> withheld) {
    return writer.count() == 0 && (set.isCorrections() || isKnown(withheld));
  }

  private boolean isKnown(NavigableSet<LocalDate> withheld) {
    return newest().filter(marker -> marker.withheld().equals(withheld)).isPresent()
        && snapshot.markers().stream()
            .filter(marker -> marker.chain().equals(source()))
            .anyMatch(
                marker ->
                    marker.exportDate().equals(set.exportDate())
                        && marker.extent().equals(set.extent()));
  }

  private SourceId source() {
    return set.profile().id();
  }

  private Optional<ImportMarker> newest() {
    return snapshot.newest(source());
  }

  private NavigableSet<LocalDate> confirmed() {
    return newest().map(marker -> new TreeSet<>(marker.confirmed())).orElseGet(TreeSet::new);
  }

  private Optional<Path> writeQuarantine() {
    return intake.rejected().isEmpty()
        ? Optional.empty()
        : Optional.of(
            QuarantineFile.write(quarantine, source(), set.exportDate(), intake.rejected()));
  }

  private ImportMarker marker(
      Map<String, Long> rows,
      Tally tally,
      NavigableSet<LocalDate> withheld,
      NavigableSet<LocalDate> confirmed) {
    return new ImportMarker(
        id,
        newest().map(ImportMarker::id),
        source(),
        Optional.of(set.profile().describe(set.exportDate())),
        set.exportDate(),
        set.extent(),
        Stream.concat(set.files().stream(), set.joined().stream().map(JoinedFile::file))
            .distinct()
            .map(file -> fileRead(file, rows))
            .toList(),
        tally,
        withheld,
        confirmed,
        clock.instant());
  }

  private ImportMarker.FileRead fileRead(ExportFile file, Map<String, Long> rows) {
    return new ImportMarker.FileRead(
        file.name(),
        file.sha256(),
        rows.getOrDefault(file.sha256(), joinedRows.getOrDefault(file.sha256(), 0L)),
        set.reading());
  }

  private ImportReport report(
      ImportReport.Result result,
      Tally tally,
      Optional<Path> file,
      NavigableSet<LocalDate> withheld,
      Map<String, Long> rows,
      Optional<String> notKept) {
    Optional<Disappearances.Gap> gap =
        withheld.contains(set.exportDate())
            ? detector.disappearances().at(set.exportDate())
            : Optional.empty();
    return new ImportReport(
        set,
        result,
        tally,
        file,
        gap,
        rows,
        Optional.empty(),
        detector.repeatedKeys(),
        remarks,
        reuse(notKept));
  }

  private ImportReport.Reuse reuse(Optional<String> notKept) {
    return new ImportReport.Reuse(
        recognised.map(Recognised::rows).orElse(0L),
        recognised.map(Recognised::lookedUp).orElse(0L),
        notKept);
  }
}
