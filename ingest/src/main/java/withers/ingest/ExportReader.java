package withers.ingest;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.LongConsumer;
import withers.chip.ChipNumberReader;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.ingest.file.ExportFile;
import withers.ingest.join.JoinedRows;
import withers.ingest.profile.SourceProfile;
import withers.ingest.quarantine.CorrectedRows;
import withers.ingest.rows.Row;
import withers.ingest.rows.Rows;
import withers.ingest.translate.RowTranslator;
import withers.ingest.translate.Surroundings;

/** Reads the files of an export, row by row. */
final class ExportReader implements RowSource {

  /** Opens the file of this number among those of the export. */
  @FunctionalInterface
  interface Opener {
    Rows open(ExportFile file, int index);
  }

  /** Bytes of a file for which a thread is not worth while. */
  private static final long SHORT = 1 << 18;

  private final ExportSet set;
  private final ChipNumberReader numbers;
  private final Function<Contact, ContactRef> references;
  private final Opener opener;
  private final List<String> remarks = new ArrayList<>();
  private Map<String, Long> joinedRows = Map.of();

  ExportReader(
      ExportSet set,
      ChipNumberReader numbers,
      Function<Contact, ContactRef> references,
      LongConsumer progress) {
    this(set, numbers, references, (file, index) -> rows(set, file, progress));
  }

  private static Rows rows(ExportSet set, ExportFile file, LongConsumer progress) {
    Rows rows = OpenExport.rows(file, set.format(), set.headers(), progress);
    boolean isLong = file.content() == ExportFile.Content.TEXT && file.size() > SHORT;
    return isLong ? ReadAhead.of(rows) : rows;
  }

  ExportReader(
      ExportSet set,
      ChipNumberReader numbers,
      Function<Contact, ContactRef> references,
      Opener opener) {
    this.set = set;
    this.numbers = numbers;
    this.references = references;
    this.opener = opener;
  }

  @Override
  public void read(RowHandler handler) {
    remarks.clear();
    Joins joins = set.isCorrections() ? Joins.NONE : Joins.read(set);
    joinedRows = joins.rows();
    for (int i = 0; i < set.files().size(); i++) {
      read(set.files().get(i), i, joins, handler);
    }
  }

  private void read(ExportFile file, int index, Joins joins, RowHandler handler) {
    try (Rows rows = open(file, index, joins)) {
      Surroundings around = new Surroundings(set.exportDate(), index, numbers, references);
      RowTranslator translator = new RowTranslator(set.profile(), rows.header(), around);
      Optional<ExportDateColumn> dates = dateColumn(rows);
      for (Optional<Row> next = rows.next(); next.isPresent(); next = rows.next()) {
        Row row = next.get();
        dates.ifPresent(column -> column.require(row, set.exportDate()));
        handler.on(file, rows.header(), row, translator.translate(row));
      }
      remarks.addAll(file.remarks());
      remarks.addAll(rows.remarks());
    }
  }

  @Override
  public List<String> remarks() {
    return List.copyOf(remarks);
  }

  private Rows open(ExportFile file, int index, Joins joins) {
    Rows rows = opener.open(file, index);
    if (set.isCorrections()) {
      return CorrectedRows.of(rows);
    }
    return joins.tables().isEmpty() ? rows : JoinedRows.of(rows, joins.tables());
  }

  @Override
  public Map<String, Long> joinedRows() {
    return joinedRows;
  }

  private Optional<ExportDateColumn> dateColumn(Rows rows) {
    return set.dateColumn()
        ? Optional.of(ExportDateColumn.of(set.profile(), rows.header()))
        : Optional.empty();
  }

  /** The export date that a file states in its first row; empty when it has no rows. */
  static Optional<LocalDate> statedDate(SourceProfile profile, ExportFile file) {
    try (Rows rows = OpenExport.rows(file, profile.format(), profile.ownHeaders(), bytes -> {})) {
      ExportDateColumn column = ExportDateColumn.of(profile, rows.header());
      return rows.next().map(column::read);
    }
  }
}
