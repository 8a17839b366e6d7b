package withers.ingest;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import withers.contact.ContactRef;
import withers.ingest.change.Remembered;
import withers.ingest.csv.CsvLayout;
import withers.ingest.file.ExportFile;
import withers.ingest.known.EarlyRecords;
import withers.ingest.known.KnownRecords;
import withers.ingest.known.Strangers;
import withers.ingest.rows.Rows;
import withers.ingest.translate.Translation;

/**
 * Reads the rows of records that are not recognised while their file is still being compared, looks
 * their contacts up and takes them in. It is a guess that all of them have to be read, and that the
 * file ends with a line's end; who asks for the rows sees whether that was right.
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
   * @param intake has taken the rows, and holds back what is to be written
   */
  record Result(List<HeldRow> rows, List<String> remarks, Intake intake) {}

  /** Contacts of so many rows are looked up together, in the order of the vault's index. */
  private static final int TOGETHER = 2048;

  private final ExportSet set;
  private final CsvLayout layout;
  private final Reading reading;
  private final UnaryOperator<Set<ContactRef>> stored;
  private final Function<Remembered, Intake> intakes;
  private final Time time;
  private final AtomicBoolean decided = new AtomicBoolean(); // whether anybody will read, and who
  private final CompletableFuture<Optional<Result>> result = new CompletableFuture<>();
  private EarlyRecords records = new EarlyRecords(new byte[0], 0, 0);

  /**
   * @param set an export of one file
   * @param stored those of some references whose contacts are in the vault
   * @param intakes gives what takes the rows, and writes nothing until it is told to
   */
  EarlyRows(
      ExportSet set,
      CsvLayout layout,
      Reading reading,
      UnaryOperator<Set<ContactRef>> stored,
      Function<Remembered, Intake> intakes,
      Time time) {
    this.set = set;
    this.layout = layout;
    this.reading = reading;
    this.stored = stored;
    this.intakes = intakes;
    this.time = time;
  }

  @Override
  public void begin(KnownRecords known, byte[] start, long line) {
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

  private void readIfWanted(EarlyRecords found, KnownRecords known) {
    if (decided.compareAndSet(false, true)) {
      complete(found, known);
    }
  }

  private void complete(EarlyRecords found, KnownRecords known) {
    Optional<Result> read = Optional.empty();
    try {
      read = Optional.of(read(found, known));
    } catch (RuntimeException readAgain) {
      // What is to be said of it is said by who reads the rows instead.
    } finally {
      result.complete(read);
    }
  }

  private Result read(EarlyRecords found, KnownRecords known) {
    ExportReader reader = reading.by((file, index) -> open(file, found));
    Intake intake = intakes.apply(known);
    List<HeldRow> rows = new ArrayList<>();
    reader.read(
        (file, header, row, translation) -> {
          rows.add(HeldRow.of(file, header, row, translation, known::mark));
          if (rows.size() % TOGETHER == 0) {
            take(rows.subList(rows.size() - TOGETHER, rows.size()), intake);
          }
        });
    take(rows.subList(rows.size() / TOGETHER * TOGETHER, rows.size()), intake);
    intake.writer().handOverTheRest(); // whose encoding may begin
    return new Result(rows, reader.remarks(), intake);
  }

  private void take(List<HeldRow> rows, Intake intake) {
    Set<ContactRef> known = stored.apply(references(rows));
    rows.forEach(one -> intake.take(one.file(), one.header(), one.row(), one.translation(), known));
  }

  private static Set<ContactRef> references(List<HeldRow> rows) {
    Set<ContactRef> references = new HashSet<>();
    for (HeldRow one : rows) {
      if (one.translation() instanceof Translation.Stated stated) {
        stated.contacts().forEach(contact -> references.add(contact.reference()));
      }
    }
    return references;
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
