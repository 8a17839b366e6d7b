package withers.ingest;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import withers.contact.ContactRef;
import withers.contact.ContactVault.RecordName;
import withers.contact.Referenced;
import withers.fact.Locator;
import withers.id.RecordKey;
import withers.ingest.change.ChangeDetector;
import withers.ingest.file.ExportFile;
import withers.ingest.quarantine.QuarantinedRow;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.translate.Translation;

/**
 * Takes the rows of an export: compares each with what its source said before, and gathers what is
 * to be written, and what can't be taken. Good for one attempt to import.
 */
final class Intake {

  private final ExportSet set;
  private final BatchWriter writer;
  private final KeptOut keptOutBefore;
  private final ChangeDetector detector;
  private final List<QuarantinedRow> rejected = new ArrayList<>();
  private long rows;
  private long applied;
  private long keptOut;

  /**
   * @param detector compares the rows with what was said before, and hands over to the writer
   */
  Intake(ExportSet set, ChangeDetector detector, BatchWriter writer, KeptOut keptOutBefore) {
    this.set = set;
    this.detector = detector;
    this.writer = writer;
    this.keptOutBefore = keptOutBefore;
  }

  /** Takes a row of which nobody knows whether its contacts are stored. */
  void take(ExportFile file, Header header, Row row, Translation translation) {
    take(file, header, row, translation, Set.of());
  }

  /**
   * Takes a row.
   *
   * @param stored contacts that are in the vault, all or some of them
   */
  void take(
      ExportFile file, Header header, Row row, Translation translation, Set<ContactRef> stored) {
    rows++;
    if (translation instanceof Translation.Stated stated) {
      take(stated, stored);
    } else if (translation instanceof Translation.Rejected no) {
      int index = set.files().indexOf(file);
      no.key().ifPresent(key -> detector.unreadable(key, new Locator(index, row.line())));
      if (no.key().filter(this::isForgotten).isPresent()) {
        keptOut++;
      } else {
        rejected.add(QuarantinedRow.of(file.name(), header, row, no.reject()));
      }
    }
    writer.flushIfFull();
  }

  /** Such a row may hold details of somebody who asked to be forgotten: it is counted, not kept. */
  private boolean isForgotten(RecordKey key) {
    return keptOutBefore.records().contains(new RecordName(set.profile().id(), key));
  }

  private void take(Translation.Stated stated, Set<ContactRef> stored) {
    if (detector.row(stated.key(), stated.statements())) {
      applied++;
      writer.contacts(stated.key(), toStore(stated, stored));
    } else {
      writer.contacts(stated.key(), keptOutBefore.awaited(stated.contacts()));
    }
  }

  /** Of a record that is kept out all contacts are told: they may have to be kept out, too. */
  private List<Referenced> toStore(Translation.Stated stated, Set<ContactRef> stored) {
    return stored.isEmpty() || isForgotten(stated.key())
        ? stated.contacts()
        : stated.contacts().stream().filter(one -> !stored.contains(one.reference())).toList();
  }

  ChangeDetector detector() {
    return detector;
  }

  BatchWriter writer() {
    return writer;
  }

  /** Rows that can't be taken and may be kept. */
  List<QuarantinedRow> rejected() {
    return rejected;
  }

  /** How many rows were taken in all. */
  long rows() {
    return rows;
  }

  /** How many of them said something new. */
  long applied() {
    return applied;
  }

  /** How many could not be taken, kept or not. */
  long refused() {
    return rejected.size() + keptOut;
  }
}
