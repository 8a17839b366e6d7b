package withers.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Writes the files of every source and round while animals go by, one at a time. */
final class Exports implements AutoCloseable {

  /** One file that is being written. */
  private record Open(
      Source source, Round round, LocalDate day, List<Column> columns, CSVPrinter file) {}

  /** Of each source, in order of round. */
  private final Map<Source, List<Open>> files = new EnumMap<>(Source.class);

  Exports(Path folder) throws IOException {
    for (Round round : Round.ALL) {
      Path exports = Files.createDirectories(folder.resolve(round.folder()));
      for (Source source : Source.values()) {
        Optional<LocalDate> day = source.exportDay(round);
        if (day.isPresent()) {
          files
              .computeIfAbsent(source, any -> new ArrayList<>())
              .add(begun(exports, source, round, day.get()));
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
    write(ledger, Telling.AS_TYPED);
  }

  /** Writes what each round's exports say of one animal, as that tells it. */
  void write(Ledger ledger, Telling telling) throws IOException {
    for (Ledger.Entry entry : ledger.entries()) {
      List<Row> before = List.of();
      for (Open open : files.getOrDefault(entry.source(), List.of())) {
        List<Row> rows = telling.rows(entry, open.round, open.day);
        write(open, rows, before.stream().findFirst());
        before = rows;
      }
    }
  }

  /**
   * Writes those that the source sends.
   *
   * @param before the record as it was in the round before
   */
  private static void write(Open open, List<Row> rows, Optional<Row> before) throws IOException {
    for (Row row : rows) {
      if (open.source.exports(row, before, open.round)) {
        write(open, row);
      }
    }
  }

  private static void write(Open open, Row row) throws IOException {
    for (Column column : open.columns) {
      open.file.print(column.cell().apply(row));
    }
    open.file.println();
  }

  @Override
  public void close() throws IOException {
    for (List<Open> rounds : files.values()) {
      for (Open open : rounds) {
        open.file.close();
      }
    }
  }
}
