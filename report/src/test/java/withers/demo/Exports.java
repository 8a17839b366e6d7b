package withers.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Writes the files of every source and round while animals go by, one at a time. */
final class Exports implements AutoCloseable {

  /** One file that is being written. */
  private record Open(
      Source source, Round round, LocalDate day, List<Column> columns, CSVPrinter file) {}

  private final List<Open> files = new ArrayList<>();

  Exports(Path folder) throws IOException {
    for (Round round : Round.ALL) {
      Path exports = Files.createDirectories(folder.resolve(round.folder()));
      for (Source source : Source.values()) {
        Optional<LocalDate> day = source.exportDay(round);
        if (day.isPresent()) {
          files.add(begun(exports, source, round, day.get()));
        }
      }
    }
  }

  private static Open begun(Path folder, Source source, Round round, LocalDate day)
      throws IOException {
    List<Column> columns = Layouts.of(source);
    CSVFormat format =
        CSVFormat.DEFAULT
            .builder()
            .setDelimiter(source.delimiter())
            .setRecordSeparator(source.newline())
            .setHeader(columns.stream().map(Column::header).toArray(String[]::new))
            .get();
    Path file = folder.resolve(source.fileName(round, day));
    return new Open(
        source, round, day, columns, new CSVPrinter(Files.newBufferedWriter(file), format));
  }

  /** Writes what each round's exports say of one animal. */
  void write(Ledger ledger) throws IOException {
    for (Open open : files) {
      for (Ledger.Entry entry : ledger.of(open.source)) {
        Optional<Row> row = entry.asOn(open.day);
        if (row.isPresent() && open.source.exports(row.get(), before(open, entry), open.round)) {
          write(open, row.get());
        }
      }
    }
  }

  /** The record as it was in the round before. */
  private static Optional<Row> before(Open open, Ledger.Entry entry) {
    return Round.before(open.round).flatMap(open.source::exportDay).flatMap(entry::asOn);
  }

  private static void write(Open open, Row row) throws IOException {
    for (Column column : open.columns) {
      open.file.print(column.cell().apply(row));
    }
    open.file.println();
  }

  @Override
  public void close() throws IOException {
    for (Open open : files) {
      open.file.close();
    }
  }
}
