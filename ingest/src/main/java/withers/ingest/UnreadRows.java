package withers.ingest;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import withers.chip.ChipNumberReader;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.id.RecordKey;
import withers.ingest.csv.CsvLayout;
import withers.ingest.file.ExportFile;
import withers.ingest.known.Recognised;
import withers.ingest.known.UnreadPlaces;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.rows.Rows;
import withers.ingest.translate.Translation;

/**
 * The rows of an export that were not recognised. A moderate number of them is read once and held;
 * more are read again each time.
 */
final class UnreadRows implements RowSource {

  private static final int MOST_HELD = 50_000;

  private record Held(ExportFile file, Header header, Row row, Translation translation) {}

  private final ExportSet set;
  private final Recognised recognised;
  private final CsvLayout layout;
  private final ExportReader reader;
  private final Set<RecordKey> recognisedToo = new HashSet<>();
  private Optional<List<Held>> held = Optional.empty();

  private UnreadRows(
      ExportSet set,
      LastExports.Known known,
      ChipNumberReader numbers,
      Function<Contact, ContactRef> references) {
    this.set = set;
    this.recognised = known.recognised();
    this.layout = known.layout();
    this.reader = new ExportReader(set, numbers, references, this::open);
  }

  /** Reads what was not recognised, and every row that shares its key with one of those. */
  static UnreadRows of(
      ExportSet set,
      LastExports.Known known,
      ChipNumberReader numbers,
      Function<Contact, ContactRef> references) {
    UnreadRows rows = new UnreadRows(set, known, numbers, references);
    rows.look();
    return rows.recognisedToo.isEmpty()
        ? rows
        : of(set, known.without(rows.recognisedToo), numbers, references);
  }

  Recognised recognised() {
    return recognised;
  }

  /** Of rows with one key the order counts: one of them cannot be recognised and another read. */
  private void look() {
    List<Held> rows = new ArrayList<>();
    reader.read(
        (file, header, row, translation) -> {
          note((UnreadRow) row, translation);
          if (rows.size() <= MOST_HELD) {
            rows.add(new Held(file, header, row, translation));
          }
        });
    held = rows.size() <= MOST_HELD ? Optional.of(rows) : Optional.empty();
  }

  private void note(UnreadRow row, Translation translation) {
    if (translation instanceof Translation.Stated stated) {
      row.places.isOf(row.record, stated.key());
      noteKey(stated.key());
    } else if (translation instanceof Translation.Rejected rejected) {
      rejected.key().ifPresent(this::noteKey);
    }
  }

  private void noteKey(RecordKey key) {
    if (recognised.hasRecognised(key)) {
      recognisedToo.add(key);
    }
  }

  @Override
  public void read(RowHandler handler) {
    if (held.isPresent()) {
      held.get().forEach(one -> handler.on(one.file, one.header, one.row, one.translation));
    } else {
      reader.read(handler);
    }
  }

  @Override
  public long recognised(ExportFile file) {
    return recognised.rows(set.files().indexOf(file));
  }

  @Override
  public List<String> remarks() {
    return reader.remarks();
  }

  private Rows open(ExportFile file, int index) {
    ExportFile left = recognised.endsUnread(index) ? file : file.withoutItsEnd();
    try {
      return new UnreadFile(
          OpenExport.rows(left, recognised.unread(index), set.format(), layout),
          recognised.places(index));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The rows that a reader makes of what is left of a file. */
  private record UnreadFile(Rows rows, UnreadPlaces places) implements Rows {

    @Override
    public Header header() {
      return rows.header();
    }

    @Override
    public Optional<Row> next() {
      return rows.next().map(row -> new UnreadRow(row, places, places.find(row.line())));
    }

    @Override
    public List<String> remarks() {
      return rows.remarks();
    }

    @Override
    public void close() {
      rows.close();
    }
  }

  /** A row that knows where in the whole file it stands. */
  private record UnreadRow(Row row, UnreadPlaces places, int record) implements Row {

    @Override
    public long line() {
      return places.line(record);
    }

    @Override
    public int size() {
      return row.size();
    }

    @Override
    public String cell(int place) {
      return row.cell(place);
    }

    @Override
    public String text() {
      return row.text();
    }
  }
}
