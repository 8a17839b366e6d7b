package withers.ingest;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import withers.chip.ChipNumber;
import withers.chip.ChipNumberReader;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.id.ImportId;
import withers.id.RecordKey;
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
  private final String surroundings;

  /**
   * @param known where exports are kept; empty to read every row of each
   * @param numbers what reads numbers has a say in what a row states
   * @param references so have the references of contacts
   */
  LastExports(
      Optional<KnownExports> known,
      ChipNumberReader numbers,
      Function<Contact, ContactRef> references) {
    this.known = known;
    this.surroundings = numbers.read(TEST_NUMBER).kind() + " " + references.apply(Contact.NOBODY);
  }

  /** What is known of an export before it is read; empty when nothing is. */
  Optional<Recognised> recognise(ExportSet set, LogSnapshot snapshot) {
    Optional<ImportId> parent = snapshot.newest(set.profile().id()).map(ImportMarker::id);
    return parent.flatMap(
        newest ->
            suitable(set)
                .flatMap(
                    exports ->
                        exports.recognise(
                            set.profile().id(),
                            circumstances(set),
                            newest,
                            set.exportDate(),
                            set.files())));
  }

  private Optional<KnownExports> suitable(ExportSet set) {
    return known
        .filter(exports -> Code.DIGEST.isPresent())
        .filter(exports -> set.extent() instanceof Extent.Full)
        .filter(exports -> !set.dateColumn() && !set.isCorrections())
        .filter(exports -> set.joined().isEmpty())
        .filter(exports -> areAlike(set));
  }

  private Circumstances circumstances(ExportSet set) {
    ExportFile first = set.files().get(0);
    CsvLayout layout = layout(set, first);
    return new Circumstances(
        set.profile().digest(),
        layout.dialect().delimiter().sign(),
        layout.dialect().quoting().sign(),
        first.charset(),
        surroundings + " " + layout,
        Code.DIGEST.orElseThrow());
  }

  private static CsvLayout layout(ExportSet set, ExportFile file) {
    return LayoutFinder.find(file, set.format().text(), set.headers());
  }

  /** Whether all files are text that is laid out in one way. */
  private static boolean areAlike(ExportSet set) {
    return set.files().stream().allMatch(file -> file.content() == ExportFile.Content.TEXT)
        && set.files().stream().map(file -> layout(set, file)).distinct().count() == 1;
  }

  /** Takes note of an export that is read whole; empty when there is no use in it. */
  Optional<Learner> learner(ExportSet set, LogSnapshot snapshot) {
    return suitable(set)
        .filter(exports -> isNewest(set, snapshot))
        .map(exports -> exports.learner(set.profile().id(), circumstances(set)));
  }

  private static boolean isNewest(ExportSet set, LogSnapshot snapshot) {
    return snapshot.markers().stream()
        .filter(marker -> marker.chain().equals(set.profile().id()))
        .map(ImportMarker::exportDate)
        .noneMatch(set.exportDate()::isBefore);
  }

  /** The rows of an export, each of which is noted as it is read. */
  static RowSource noting(ExportReader rows, Learner learner) {
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
