package withers.ingest;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.UnaryOperator;
import withers.contact.ContactRef;
import withers.contact.Referenced;
import withers.ingest.change.Remembered;
import withers.ingest.csv.CsvLayout;
import withers.ingest.file.ExportFile;
import withers.ingest.known.EarlyRecords;
import withers.ingest.known.Strangers;
import withers.ingest.rows.Rows;
import withers.ingest.translate.Translation;

/**
 * Reads the rows of records that are not recognised while their file is still being compared, and
 * looks their contacts up. It is a guess that all of them have to be read, and that the file ends
 * with a line's end; who asks for the rows sees whether that was right.
 */
final class EarlyRows implements Strangers {

  /** When to read. */
  enum Time {
    /** Once a core has digested the file and would rest, if it is not all compared by then. */
    WHEN_A_CORE_IS_FREE,
    /** From the first on. */
    AT_ONCE
  }

  /** Reads an export, given how to open its file. */
  @FunctionalInterface
  interface Reading {
    ExportReader by(ExportReader.Opener opener);
  }

  /**
   * What was read.
   *
   * @param stored those of the rows' contacts that are in the vault
   */
  record Result(List<HeldRow> rows, List<String> remarks, Set<ContactRef> stored) {}

  private final ExportSet set;
  private final CsvLayout layout;
  private final Reading reading;
  private final UnaryOperator<Set<ContactRef>> stored;
  private final Time time;
  private final AtomicBoolean decided = new AtomicBoolean(); // whether anybody will read, and who
  private final CompletableFuture<Optional<Result>> result = new CompletableFuture<>();
  private EarlyRecords records = new EarlyRecords(new byte[0], 0, 0);

  /**
   * @param set an export of one file
   * @param stored those of some references whose contacts are in the vault
   */
  EarlyRows(
      ExportSet set,
      CsvLayout layout,
      Reading reading,
      UnaryOperator<Set<ContactRef>> stored,
      Time time) {
    this.set = set;
    this.layout = layout;
    this.reading = reading;
    this.stored = stored;
    this.time = time;
  }

  @Override
  public void begin(Remembered known, byte[] start, long line) {
    records = new EarlyRecords(start, line, UnreadRows.MOST_HELD);
    EarlyRecords found = records;
    if (time == Time.AT_ONCE && decided.compareAndSet(false, true)) {
      new Thread(() -> complete(found, known)).start();
    } else {
      set.files().get(0).digest().afterwards(() -> readIfWanted(found, known));
    }
  }

  @Override
  public void record(byte[] bytes, int from, int length, long line, int height) {
    records.add(bytes, from, length, line, height);
  }

  @Override
  public void end() {
    records.end();
  }

  private void readIfWanted(EarlyRecords found, Remembered known) {
    if (decided.compareAndSet(false, true)) {
      complete(found, known);
    }
  }

  private void complete(EarlyRecords found, Remembered known) {
    Optional<Result> read = Optional.empty();
    try {
      read = Optional.of(read(found, known));
    } catch (RuntimeException readAgain) {
      // What is to be said of it is said by who reads the rows instead.
    } finally {
      result.complete(read);
    }
  }

  private Result read(EarlyRecords found, Remembered known) {
    ExportReader reader = reading.by((file, index) -> open(file, found));
    List<HeldRow> rows = new ArrayList<>();
    Set<ContactRef> references = new HashSet<>();
    reader.read(
        (file, header, row, translation) -> {
          rows.add(new HeldRow(file, header, (UnreadRow) row, translation));
          if (translation instanceof Translation.Stated stated) {
            known.timeline(stated.key()); // which is looked up once, and wanted soon
            stated.contacts().stream().map(Referenced::reference).forEach(references::add);
          }
        });
    return new Result(rows, reader.remarks(), stored.apply(references));
  }

  private Rows open(ExportFile file, EarlyRecords found) {
    EarlyRecords.Reader records = found.reader();
    return new UnreadFile(
        OpenExport.rows(file.withoutItsEnd(), records, set.format(), layout), records.places());
  }

  /**
   * What was read, once all was compared; empty when nobody has begun to read, who then will not,
   * or when it could not be read.
   */
  Optional<Result> result() {
    return decided.compareAndSet(false, true) ? Optional.empty() : result.join();
  }
}
