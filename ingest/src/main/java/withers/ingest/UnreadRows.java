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
import withers.ingest.file.ExportFile;
import withers.ingest.known.KeyMark;
import withers.ingest.known.Recognised;
import withers.ingest.rows.Rows;
import withers.ingest.translate.Translation;

/**
 * The rows of an export that were not recognised. A moderate number of them is read once and held;
 * more are read again each time.
 */
final class UnreadRows implements RowSource {

  /** More are not worth the memory. */
  static final int MOST_HELD = 50_000;

  private final ExportSet set;
  private final LastExports.Known known;
  private final Recognised recognised;
  private final ExportReader reader;
  private final Set<RecordKey> recognisedToo = new HashSet<>();
  private final Optional<EarlyRows.Result> early;
  private Optional<List<HeldRow>> held = Optional.empty();

  private UnreadRows(
      ExportSet set,
      LastExports.Known known,
      ChipNumberReader numbers,
      Function<Contact, ContactRef> references) {
    this.set = set;
    this.known = known;
    this.recognised = known.recognised();
    this.reader = new ExportReader(set, numbers, references, this::open);
    this.early = known.early().flatMap(EarlyRows::result).filter(read -> isRight());
  }

  /** Whether rows that were read early are those that are to be read, to the end of the file. */
  private boolean isRight() {
    return recognised.isAsFound()
        && (set.files().get(0).endsWithNewline() || !recognised.endsUnread(0));
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
    if (early.isPresent()) {
      held = Optional.of(early.get().rows());
      early.get().rows().forEach(this::note);
    } else {
      held = Optional.of(readAll()).filter(rows -> rows.size() <= MOST_HELD);
    }
  }

  private List<HeldRow> readAll() {
    List<HeldRow> rows = new ArrayList<>();
    reader.read(
        (file, header, row, translation) -> {
          HeldRow one = HeldRow.of(file, header, row, translation, recognised::mark);
          note(one);
          if (rows.size() <= MOST_HELD) {
            rows.add(one);
          }
        });
    return rows;
  }

  private void note(HeldRow one) {
    one.key().ifPresent(key -> note(one, key));
  }

  private void note(HeldRow one, KeyMark key) {
    if (one.translation() instanceof Translation.Stated) {
      recognised.isOf(set.files().indexOf(one.file()), one.row().record(), key);
    }
    if (recognised.isRecognisedToo(key)) {
      one.translation().named().ifPresent(recognisedToo::add);
    }
  }

  @Override
  public void read(RowHandler handler) {
    if (held.isPresent()) {
      held.get().forEach(one -> handler.on(one.file(), one.header(), one.row(), one.translation()));
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
    return early.map(EarlyRows.Result::remarks).orElseGet(reader::remarks);
  }

  @Override
  public Optional<Intake> taken() {
    return early.map(EarlyRows.Result::intake);
  }

  private Rows open(ExportFile file, int index) {
    ExportFile left = recognised.endsUnread(index) ? file : file.withoutItsEnd();
    try {
      return new UnreadFile(
          OpenExport.rows(left, recognised.unread(index), set.format(), known.layout()),
          recognised.places(index));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
