package withers.ingest;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import withers.chip.ChipNumber;
import withers.chip.ChipNumberReader;
import withers.contact.Contact;
import withers.contact.ContactVault;
import withers.id.ImportId;
import withers.id.RecordKey;
import withers.ingest.change.Remembered;
import withers.ingest.csv.CsvLayout;
import withers.ingest.csv.LayoutFinder;
import withers.ingest.file.ExportFile;
import withers.ingest.known.Circumstances;
import withers.ingest.known.KnownExports;
import withers.ingest.known.Learner;
import withers.ingest.known.ReadingCode;
import withers.ingest.known.Recognised;
import withers.ingest.translate.RowTranslator;
import withers.ingest.translate.Translation;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.source.Extent;

/**
 * Goes by the last full export of a source where that can be done, and takes note of each for the
 * next. Whenever it cannot be done, every row is read, with the same result.
 */
final class LastExports {

  /** A number under the test code: whether it is taken depends on the workspace's settings. */
  private static final String TEST_NUMBER = "999000000000001";

  private final Optional<KnownExports> known;
  private final ChipNumberReader numbers;
  private final ContactVault vault;
  private final EarlyRows.Time early;
  private final String surroundings;

  /**
   * @param known where exports are kept; empty to read every row of each
   * @param numbers what reads numbers has a say in what a row states
   * @param vault so have the references of contacts
   * @param early when rows are read of records that are not recognised
   */
  LastExports(
      Optional<KnownExports> known,
      ChipNumberReader numbers,
      ContactVault vault,
      EarlyRows.Time early) {
    this.known = known;
    this.numbers = numbers;
    this.vault = vault;
    this.early = early;
    this.surroundings = numbers.read(TEST_NUMBER).kind() + " " + vault.reference(Contact.NOBODY);
  }

  /** Where exports are kept, and how this one is to be read. */
  private record Suitable(KnownExports exports, Circumstances circumstances, CsvLayout layout) {}

  /**
   * An export of which something is known before it is read.
   *
   * @param early rows that may have been read by now; empty when none have
   */
  record Known(Recognised recognised, CsvLayout layout, Optional<EarlyRows> early) {

    /** The same, with no record of these keys recognised. */
    Known without(Collection<RecordKey> keys) {
      return new Known(recognised.without(keys), layout, Optional.empty());
    }
  }

  /**
   * What is known of an export before it is read; empty when nothing is.
   *
   * @param intakes gives what takes rows that are read early
   */
  Optional<Known> recognise(
      ExportSet set, LogSnapshot snapshot, Function<Remembered, Intake> intakes) {
    Optional<ImportId> parent = snapshot.newest(set.profile().id()).map(ImportMarker::id);
    return parent.flatMap(
        newest -> suitable(set).flatMap(suitable -> recognise(set, newest, suitable, intakes)));
  }

  private Optional<Known> recognise(
      ExportSet set, ImportId parent, Suitable suitable, Function<Remembered, Intake> intakes) {
    EarlyRows rows =
        new EarlyRows(
            set,
            suitable.layout,
            opener -> new ExportReader(set, numbers, vault::reference, opener),
            vault::stored,
            intakes,
            early);
    return suitable
        .exports
        .recognise(
            set.profile().id(), suitable.circumstances, parent, set.exportDate(), set.files(), rows)
        .map(recognised -> new Known(recognised, suitable.layout, Optional.of(rows)));
  }

  private Optional<Suitable> suitable(ExportSet set) {
    return known
        .filter(exports -> Code.DIGEST.isPresent())
        .filter(exports -> set.extent() instanceof Extent.Full)
        .filter(exports -> !set.dateColumn() && !set.isCorrections())
        .filter(exports -> set.joined().isEmpty())
        .flatMap(
            exports ->
                layout(set)
                    .map(layout -> new Suitable(exports, circumstances(set, layout), layout)));
  }

  private Circumstances circumstances(ExportSet set, CsvLayout layout) {
    return new Circumstances(
        set.profile().digest(),
        layout.dialect().delimiter().sign(),
        layout.dialect().quoting().sign(),
        set.files().get(0).charset(),
        surroundings + " " + layout,
        Code.DIGEST.orElseThrow());
  }

  /** The layout of all files; empty when they are not text that is laid out in one way. */
  private static Optional<CsvLayout> layout(ExportSet set) {
    if (!set.files().stream().allMatch(file -> file.content() == ExportFile.Content.TEXT)) {
      return Optional.empty();
    }
    List<CsvLayout> layouts =
        set.files().stream().map(file -> layout(set, file)).distinct().toList();
    return layouts.size() == 1 ? Optional.of(layouts.get(0)) : Optional.empty();
  }

  private static CsvLayout layout(ExportSet set, ExportFile file) {
    return LayoutFinder.find(file, set.format().text(), set.headers());
  }

  /** Takes note of an export that is read whole; empty when there is no use in it. */
  Optional<Learner> learner(ExportSet set, LogSnapshot snapshot) {
    return suitable(set)
        .filter(suitable -> isNewest(set, snapshot))
        .map(one -> one.exports.learner(set.profile().id(), one.circumstances));
  }

  private static boolean isNewest(ExportSet set, LogSnapshot snapshot) {
    return snapshot.markers().stream()
        .filter(marker -> marker.chain().equals(set.profile().id()))
        .map(ImportMarker::exportDate)
        .noneMatch(set.exportDate()::isBefore);
  }

  /** The rows of an export, each of which is noted as it is read. */
  static RowSource noting(RowSource rows, Learner learner) {
    return new RowSource() {
      @Override
      public void read(RowHandler handler) {
        rows.read(
            (file, header, row, translation) -> {
              learner.row(file, row.line(), statedKey(translation));
              handler.on(file, header, row, translation);
            });
      }

      @Override
      public List<String> remarks() {
        return rows.remarks();
      }
    };
  }

  private static Optional<RecordKey> statedKey(Translation translation) {
    return translation instanceof Translation.Stated stated
        ? Optional.of(stated.key())
        : Optional.empty();
  }

  /** Digested once, when it is first asked for. */
  private static final class Code {
    static final Optional<String> DIGEST =
        ReadingCode.digest(List.of(RowTranslator.class, ChipNumber.class));
  }
}
