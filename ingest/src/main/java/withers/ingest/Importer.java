package withers.ingest;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ForkJoinPool;
import java.util.function.LongConsumer;
import java.util.function.Supplier;
import java.util.stream.Stream;
import withers.chip.ChipNumberReader;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.id.ImportId;
import withers.ingest.change.ChangeDetector;
import withers.ingest.change.Rebuilt;
import withers.ingest.change.Remembered;
import withers.ingest.file.ExportFile;
import withers.ingest.known.KnownExports;
import withers.ingest.known.Learner;
import withers.ingest.known.Recognised;
import withers.ingest.known.UnrecognisableException;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.StaleParentException;
import withers.point.Point;
import withers.point.Points;
import withers.source.InputRefusedException;

/**
 * Imports exports, each whole or not at all. An import that finds that another of the same source
 * was faster compares again.
 */
public final class Importer {

  /** About a thousand events for each partition of the chip stream: a full chunk. */
  public static final int FULL_BATCH = 64_000;

  /**
   * An export of up to so many bytes has some hundred thousand rows. What they come to is held in
   * memory until all of them are checked: encoded events, and contacts.
   */
  static final long SHORT = 1 << 24;

  private static final int ATTEMPTS = 3;
  private static final ContactRef NO_REFERENCE = new ContactRef(0, 0, 0);

  private final EventLog log;
  private final ContactVault vault;
  private final ChipNumberReader numbers;
  private final Path quarantine;
  private final Clock clock;
  private final NextId ids;
  private final Points points;
  private final int batch;
  private final long shortExport;
  private final LastExports lastExports;
  private final Rebuilder rebuilder;
  private final EarlyHistories histories;

  /**
   * @param quarantine the folder for rows that can't be taken
   * @param clock tells when a marker is recorded
   * @param ids gives a fresh id for each attempt
   * @param batch about how many events are held in memory and written at a time, from 1
   * @param known where the last full export of each source is kept, so that the next need not be
   *     read whole; empty to read every row of each
   */
  public Importer(
      EventLog log,
      ContactVault vault,
      ChipNumberReader numbers,
      Path quarantine,
      Clock clock,
      Supplier<ImportId> ids,
      Points points,
      int batch,
      Optional<KnownExports> known) {
    this(
        log,
        vault,
        numbers,
        quarantine,
        clock,
        ids,
        points,
        batch,
        known,
        EarlyRows.Time.WHEN_A_CORE_IS_FREE,
        SHORT);
  }

  /**
   * @param early when rows of records are read that are not recognised
   * @param shortExport bytes of the longest export that is read once
   */
  Importer(
      EventLog log,
      ContactVault vault,
      ChipNumberReader numbers,
      Path quarantine,
      Clock clock,
      Supplier<ImportId> ids,
      Points points,
      int batch,
      Optional<KnownExports> known,
      EarlyRows.Time early,
      long shortExport) {
    this.log = log;
    this.vault = vault;
    this.numbers = numbers;
    this.quarantine = quarantine;
    this.clock = clock;
    this.ids = new NextId(ids);
    this.points = points;
    this.batch = batch;
    this.shortExport = shortExport;
    this.lastExports = new LastExports(known, numbers, vault, early);
    this.rebuilder = new Rebuilder(numbers, shortExport);
    this.histories =
        new EarlyHistories(
            log, rebuilder, set -> !isImported(set, log.snapshot()), ForkJoinPool.commonPool());
  }

  /**
   * Tells which exports are going to be imported, and in which order, so that something of later
   * ones can be read while earlier ones are imported.
   */
  public void expect(List<ExportSet> sets) {
    histories.expect(sets);
  }

  /**
   * Imports an export.
   *
   * @param allowed what an operator allows it besides
   * @param progress is told of bytes read, as if each file were read twice
   * @throws InputRefusedException when it can't be taken; nothing was changed
   * @throws StaleParentException when others were faster again and again; nothing was changed
   */
  public ImportReport run(ExportSet set, Set<Allowance> allowed, LongConsumer progress) {
    try {
      return runInTurn(set, allowed, progress);
    } finally {
      histories.passed(set);
    }
  }

  private ImportReport runInTurn(ExportSet set, Set<Allowance> allowed, LongConsumer progress) {
    LogSnapshot before = log.snapshot();
    if (isImported(set, before)) {
      return ImportReport.importedBefore(set, lastImported(set, before));
    }
    // Rows that were put right belong to the export that they come from, however old that is.
    requireInOrder(set, before, allowed.contains(Allowance.BACKFILL) || set.isCorrections());
    points.reached(Point.IMPORT_BEFORE_CHECK);
    boolean newRecords = allowed.contains(Allowance.NEW_RECORDS);
    return runByTheLast(set, before, newRecords, progress)
        .orElseGet(() -> runWhole(set, newRecords, progress));
  }

  /** Reads what the source's last export did not hold; empty when every row has to be read. */
  private Optional<ImportReport> runByTheLast(
      ExportSet set, LogSnapshot before, boolean newRecords, LongConsumer progress) {
    ImportId id = ids.peek();
    Optional<LastExports.Known> last = Optional.empty();
    try {
      last =
          lastExports.recognise(
              set, before, known -> holdingBack(set, before, id, Optional.of(known)));
      Optional<UnreadRows> rows =
          last.map(known -> UnreadRows.of(set, known, numbers, vault::reference));
      set.files().forEach(file -> progress.accept(rows.isPresent() ? 2 * file.size() : 0));
      return rows.map(unread -> run(set, before, unread, newRecords));
    } catch (UnrecognisableException | InputRefusedException | StaleParentException readAll) {
      return Optional.empty(); // what is to be said of it is said when every row is read
    } finally {
      last.map(LastExports.Known::recognised).ifPresent(Recognised::close);
    }
  }

  private Intake holdingBack(
      ExportSet set, LogSnapshot before, ImportId id, Optional<Remembered> known) {
    Intake intake = intake(set, before, id, known);
    intake.writer().holdBack();
    return intake;
  }

  private Intake intake(
      ExportSet set, LogSnapshot before, ImportId id, Optional<Remembered> known) {
    BatchWriter writer = new BatchWriter(log, vault, set.profile().id(), id, points, batch);
    return new Intake(set, detector(set, before, known, writer), writer, KeptOut.of(vault));
  }

  private ChangeDetector detector(
      ExportSet set, LogSnapshot before, Optional<Remembered> known, BatchWriter writer) {
    if (known.isPresent()) {
      return new ChangeDetector(before, set.export(), known.get(), writer::event);
    }
    Rebuilt said = histories.take(set, before).orElseGet(() -> rebuilder.rebuild(set, before));
    return new ChangeDetector(before, set.export(), said, writer::event);
  }

  private ImportReport run(
      ExportSet set, LogSnapshot before, UnreadRows unread, boolean newRecords) {
    Map<String, Long> rows = check(set, unread);
    Recognised known = unread.recognised();
    return attempt(
        set, before, rows, unread, newRecords, Optional.of(known), Optional.of(known::prepare));
  }

  private ImportReport runWhole(ExportSet set, boolean newRecords, LongConsumer progress) {
    Supplier<ImportReport> way =
        isShort(set) ? once(set, newRecords, progress) : twice(set, newRecords, progress);
    for (int attempt = 1; ; attempt++) {
      try {
        return way.get();
      } catch (StaleParentException stale) {
        if (attempt == ATTEMPTS) {
          throw stale;
        }
      }
    }
  }

  private boolean isShort(ExportSet set) {
    return set.files().stream().allMatch(file -> file.content() == ExportFile.Content.TEXT)
        && set.files().stream().mapToLong(ExportFile::size).sum() <= shortExport;
  }

  /** Takes rows as they are checked, holding back what they come to until all are. */
  private Supplier<ImportReport> once(ExportSet set, boolean newRecords, LongConsumer progress) {
    ExportReader reader =
        new ExportReader(set, numbers, vault::reference, bytes -> progress.accept(2 * bytes));
    return () -> attemptWhole(set, Optional.empty(), reader, newRecords);
  }

  /** Checks all rows first, and takes them as they are read again. */
  private Supplier<ImportReport> twice(ExportSet set, boolean newRecords, LongConsumer progress) {
    Map<String, Long> rows =
        Check.rows(set, new ExportReader(set, numbers, Importer::noReference, progress));
    points.reached(Point.IMPORT_AFTER_CHECK);
    ExportReader reader = new ExportReader(set, numbers, vault::reference, progress);
    return () -> attemptWhole(set, Optional.of(rows), reader, newRecords);
  }

  /** Checking a row needs no reference, and references cost something. */
  static ContactRef noReference(Contact contact) {
    return NO_REFERENCE;
  }

  /**
   * @param checked how many rows each file has, when they were checked before
   */
  private ImportReport attemptWhole(
      ExportSet set, Optional<Map<String, Long>> checked, ExportReader reader, boolean newRecords) {
    LogSnapshot snapshot = log.snapshot();
    Optional<Learner> learner = lastExports.learner(set, snapshot);
    try {
      RowSource noted =
          learner.<RowSource>map(one -> LastExports.noting(reader, one)).orElse(reader);
      RowSource rows = checked.isPresent() ? noted : taken(set, snapshot, noted);
      return attempt(
          set,
          snapshot,
          checked.orElseGet(() -> check(set, rows)),
          rows,
          newRecords,
          Optional.empty(),
          learner.map(one -> one::prepare));
    } finally {
      learner.ifPresent(Learner::close);
    }
  }

  private RowSource taken(ExportSet set, LogSnapshot snapshot, RowSource rows) {
    return new RowsTaken(rows, holdingBack(set, snapshot, ids.peek(), Optional.empty()));
  }

  private Map<String, Long> check(ExportSet set, RowSource rows) {
    Map<String, Long> counted = Check.rows(set, rows);
    points.reached(Point.IMPORT_AFTER_CHECK);
    return counted;
  }

  private ImportReport attempt(
      ExportSet set,
      LogSnapshot snapshot,
      Map<String, Long> rows,
      RowSource reader,
      boolean newRecords,
      Optional<Recognised> known,
      Optional<Keeping.Way> keeping) {
    ImportId id = ids.take();
    Intake intake =
        reader
            .taken()
            .orElseGet(() -> intake(set, snapshot, id, known.map(Recognised::remembered)));
    BatchWriter writer = intake.writer();
    try (writer) {
      ImportAttempt attempt =
          new ImportAttempt(
              set, snapshot, id, intake, quarantine, clock, points, known, new Keeping(keeping));
      attempt.read(reader);
      if (!newRecords) {
        attempt.requireOldKeys();
      }
      return attempt.finish(log, rows);
    }
  }

  private static boolean isImported(ExportSet set, LogSnapshot snapshot) {
    return set.files().stream()
        .allMatch(file -> imports(set, snapshot).anyMatch(marker -> holds(marker, set, file)));
  }

  private static Optional<Instant> lastImported(ExportSet set, LogSnapshot snapshot) {
    return imports(set, snapshot)
        .filter(marker -> set.files().stream().anyMatch(file -> holds(marker, set, file)))
        .map(ImportMarker::recordedAt)
        .max(Comparator.naturalOrder());
  }

  private static Stream<ImportMarker> imports(ExportSet set, LogSnapshot snapshot) {
    return snapshot.markers().stream()
        .filter(marker -> marker.chain().equals(set.profile().id()))
        .filter(marker -> marker.exportDate().equals(set.exportDate()))
        .filter(marker -> marker.extent().equals(set.extent()));
  }

  private static boolean holds(ImportMarker marker, ExportSet set, ExportFile file) {
    return marker.files().stream()
        .anyMatch(
            read -> read.sha256().equals(file.sha256()) && read.profile().equals(set.reading()));
  }

  private static void requireInOrder(ExportSet set, LogSnapshot snapshot, boolean backfill) {
    Optional<LocalDate> newest = ChangeDetector.newestFull(snapshot, set.export());
    if (!backfill && newest.filter(set.exportDate()::isBefore).isPresent()) {
      throw new InputRefusedException(
          "Expected an export not older than the newest full one of %s, %s, but found one of %s (%s): give --backfill to add an older export. Nothing was changed."
              .formatted(set.profile().id(), newest.get(), set.exportDate(), set.names()));
    }
  }
}
