package withers.ingest.answers;

import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import withers.answers.SheetWords;
import withers.cases.Answered;
import withers.cases.CaseEvent;
import withers.codec.Streams;
import withers.id.ImportId;
import withers.ingest.quarantine.QuarantineFile;
import withers.ingest.quarantine.QuarantinedRow;
import withers.ingest.rows.Row;
import withers.ingest.rows.Rows;
import withers.ingest.translate.Reject;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.StaleParentException;
import withers.log.Tally;
import withers.point.Point;
import withers.point.Points;
import withers.source.Extent;
import withers.source.InputRefusedException;
import withers.source.OwnSources;

/**
 * Imports sheets that came back, each whole or not at all. What was answered before is not written
 * again.
 *
 * @param quarantine the folder for rows that can't be taken
 * @param words in the languages that sheets may be written in
 * @param clock in the workspace's zone
 * @param ids gives a fresh id for each attempt
 * @param points told of each point of an import
 */
public record AnswerImporter(
    EventLog log,
    Path quarantine,
    List<SheetWords> words,
    Clock clock,
    Supplier<ImportId> ids,
    Points points) {

  private static final int ATTEMPTS = 3;

  /** Events that go into one batch. */
  private static final int BATCH = 10_000;

  public AnswerImporter {
    words = List.copyOf(words);
  }

  /** What a sheet says. */
  private static final class Read {
    private final Set<Answered> fresh = new TreeSet<>();
    private final List<QuarantinedRow> rejected = new ArrayList<>();
    private final List<String> remarks = new ArrayList<>();
    private long unchanged;
    private long applied;
    private long unanswered;

    Tally tally() {
      return new Tally(
          unchanged + applied + rejected.size(),
          applied,
          unchanged,
          rejected.size(),
          0,
          fresh.size());
    }
  }

  /**
   * Imports a sheet.
   *
   * @param given the day of answers that state none; empty for that of their list
   * @throws InputRefusedException when it is broken; nothing was changed
   * @throws StaleParentException when others were faster again and again; nothing was changed
   */
  public AnswersReport run(AnswerSheet sheet, Optional<LocalDate> given) {
    for (int attempt = 1; ; attempt++) {
      try {
        return attempt(sheet, given);
      } catch (StaleParentException stale) {
        if (attempt == ATTEMPTS) {
          throw stale;
        }
      }
    }
  }

  private AnswersReport attempt(AnswerSheet sheet, Optional<LocalDate> given) {
    LogSnapshot snapshot = log.snapshot();
    Optional<ImportMarker> before = before(sheet, given, snapshot);
    if (before.isPresent()) {
      return AnswersReport.readBefore(sheet.file().name(), before.get().recordedAt());
    }
    Read read = read(sheet, new Listener(KnownFollowUps.read(snapshot), given, today()));
    Optional<Path> file = writeQuarantine(read);
    points.reached(Point.ANSWERS_READ);
    write(sheet, given, read, snapshot);
    // That its character set was found out is no remark: what is read of it is our own words.
    return new AnswersReport(
        sheet.file().name(), read.tally(), read.unanswered, file, Optional.empty(), read.remarks);
  }

  private static Optional<ImportMarker> before(
      AnswerSheet sheet, Optional<LocalDate> given, LogSnapshot snapshot) {
    return snapshot.markers().stream()
        .filter(marker -> marker.chain().equals(OwnSources.ANSWERS))
        .filter(
            marker ->
                marker.files().stream()
                    .anyMatch(
                        file ->
                            file.sha256().equals(sheet.file().sha256())
                                && file.profile().equals(reading(given))))
        .findFirst();
  }

  /** How it was read: what else than the file decides what it says. */
  private static String reading(Optional<LocalDate> given) {
    return given.map(LocalDate::toString).orElse("");
  }

  private LocalDate today() {
    return LocalDate.now(clock);
  }

  private Read read(AnswerSheet sheet, Listener listener) {
    Read read = new Read();
    try (Rows rows = sheet.open(words)) {
      AnswerHeader header =
          AnswerHeader.of(rows.header().names(), words)
              .orElseThrow(() -> new InputRefusedException(noHeader(sheet)));
      for (Optional<Row> row = rows.next(); row.isPresent(); row = rows.next()) {
        Heard heard = listener.hear(new AnswerRow(header, words, row.get()));
        if (heard instanceof Heard.Refused refused) {
          Reject reject = refused.reject();
          read.rejected.add(
              QuarantinedRow.of(sheet.file().name(), rows.header(), row.get(), reject));
        } else {
          take(heard, listener, read);
        }
      }
      read.remarks.addAll(rows.remarks());
    }
    return read;
  }

  private static String noHeader(AnswerSheet sheet) {
    return "Expected the header of a list's sheet, but found none (%s): put it into the first row. Nothing was changed."
        .formatted(sheet.file().name());
  }

  private static void take(Heard heard, Listener listener, Read read) {
    if (!(heard instanceof Heard.Answer answer)) {
      read.unanswered++;
    } else if (listener.known().has(answer.says()) || !read.fresh.add(answer.says())) {
      read.unchanged++;
    } else {
      read.applied++;
    }
  }

  private Optional<Path> writeQuarantine(Read read) {
    return read.rejected.isEmpty()
        ? Optional.empty()
        : Optional.of(QuarantineFile.write(quarantine, OwnSources.ANSWERS, today(), read.rejected));
  }

  private void write(
      AnswerSheet sheet, Optional<LocalDate> given, Read read, LogSnapshot snapshot) {
    ImportId id = ids.get();
    List<CaseEvent> events = List.copyOf(read.fresh);
    for (int from = 0, sequence = 0; from < events.size(); from += BATCH, sequence++) {
      log.append(
          new Batch<>(
              Streams.CASES,
              0,
              id,
              sequence,
              events.subList(from, Math.min(events.size(), from + BATCH))));
    }
    points.reached(Point.ANSWERS_BEFORE_MARKER);
    log.commit(
        new ImportMarker(
            id,
            snapshot.newest(OwnSources.ANSWERS).map(ImportMarker::id),
            OwnSources.ANSWERS,
            Optional.empty(),
            today(),
            new Extent.Changes(),
            List.of(
                new ImportMarker.FileRead(
                    sheet.file().name(),
                    sheet.file().sha256(),
                    read.tally().read() + read.unanswered,
                    reading(given))),
            read.tally(),
            new TreeSet<>(),
            new TreeSet<>(),
            clock.instant()));
    points.reached(Point.ANSWERS_AFTER_MARKER);
  }
}
