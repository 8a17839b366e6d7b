package withers.ingest;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.LongConsumer;
import java.util.function.Supplier;
import withers.chip.ChipNumberReader;
import withers.contact.ContactVault;
import withers.fact.Locator;
import withers.id.ImportId;
import withers.ingest.change.ChangeDetector;
import withers.ingest.change.Rekeying;
import withers.ingest.translate.Translation;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.StaleParentException;
import withers.log.Tally;
import withers.source.Extent;
import withers.source.InputRefusedException;

/** Takes an operator's word that records under new keys are those that were under old ones. */
public final class Rekeyer {

  private final EventLog log;
  private final ContactVault vault;
  private final ChipNumberReader numbers;
  private final Clock clock;
  private final Supplier<ImportId> ids;

  /**
   * @param clock tells when a marker is recorded
   * @param ids gives a fresh id for each attempt
   */
  public Rekeyer(
      EventLog log,
      ContactVault vault,
      ChipNumberReader numbers,
      Clock clock,
      Supplier<ImportId> ids) {
    this.log = log;
    this.vault = vault;
    this.numbers = numbers;
    this.clock = clock;
    this.ids = ids;
  }

  /**
   * Tells which records an export holds under new keys, and, if confirmed, keeps them under those.
   * The export itself is not imported.
   *
   * @param progress is told of bytes read
   * @throws InputRefusedException when a file is broken; nothing was changed
   * @throws StaleParentException when an import came in between; nothing was changed
   */
  public Rekeying run(ExportSet set, boolean confirmed, LongConsumer progress) {
    LogSnapshot snapshot = log.snapshot();
    ImportId id = ids.get();
    try (BatchWriter writer =
        new BatchWriter(log, vault, set.profile().id(), id, step -> {}, Importer.FULL_BATCH)) {
      ChangeDetector compared = compared(set, snapshot, progress);
      Rekeying rekeying = compared.rekeying();
      if (confirmed && !rekeying.pairs().isEmpty()) {
        compared.rekey(rekeying, writer::event);
        writer.flush();
        log.commit(marker(set, snapshot, id, writer.count()));
      }
      return rekeying;
    }
  }

  private ChangeDetector compared(ExportSet set, LogSnapshot snapshot, LongConsumer progress) {
    ChangeDetector detector = new ChangeDetector(snapshot, set.export(), event -> {});
    new ExportReader(set, numbers, vault::reference, progress)
        .read(
            (file, header, row, translation) -> {
              if (translation instanceof Translation.Stated stated) {
                detector.row(stated.key(), stated.statements());
              } else if (translation instanceof Translation.Rejected no) {
                no.key().ifPresent(key -> detector.unreadable(key, new Locator(0, row.line())));
              }
            });
    return detector;
  }

  private ImportMarker marker(ExportSet set, LogSnapshot snapshot, ImportId id, long events) {
    Optional<ImportMarker> newest = snapshot.newest(set.profile().id());
    return new ImportMarker(
        id,
        newest.map(ImportMarker::id),
        set.profile().id(),
        Optional.of(set.profile().describe(set.exportDate())),
        set.exportDate(),
        new Extent.Changes(),
        List.of(),
        new Tally(0, 0, 0, 0, 0, events),
        new TreeSet<>(newest.map(ImportMarker::withheld).orElseGet(TreeSet::new)),
        new TreeSet<>(newest.map(ImportMarker::confirmed).orElseGet(TreeSet::new)),
        clock.instant());
  }
}
