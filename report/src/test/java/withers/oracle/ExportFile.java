package withers.oracle;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;

/**
 * The rows of one export file, each a map from header to cell.
 *
 * @param exported the last date in the file's name
 */
record ExportFile(
    String source, LocalDate exported, List<String> headers, List<Map<String, String>> rows) {

  private static final Pattern NAME =
      Pattern.compile("([a-z-]+?)(?:-\\d{4}-\\d{2}-\\d{2})?-(\\d{4}-\\d{2}-\\d{2})\\.csv");

  /** The source and the export date that a file's name gives; empty for other files. */
  static Optional<Matcher> named(Path file) {
    Matcher name = NAME.matcher(file.getFileName().toString());
    return name.matches() ? Optional.of(name) : Optional.empty();
  }

  /** The files of a folder, in order of name. */
  static List<Path> in(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  static ExportFile read(Path file, Layout layout) throws IOException {
    Matcher name = named(file).orElseThrow();
    try (Reader text = Files.newBufferedReader(file);
        CSVParser parser =
            format(layout).builder().setHeader().setSkipHeaderRecord(true).get().parse(text)) {
      List<Map<String, String>> rows = new ArrayList<>();
      for (CSVRecord line : parser) {
        rows.add(new LinkedHashMap<>(line.toMap()));
      }
      return new ExportFile(
          name.group(1), LocalDate.parse(name.group(2)), parser.getHeaderNames(), rows);
    }
  }

  void write(Path file, Layout layout) throws IOException {
    try (CSVPrinter printer = new CSVPrinter(Files.newBufferedWriter(file), format(layout))) {
      printer.printRecord(headers);
      for (Map<String, String> row : rows) {
        printer.printRecord(headers.stream().map(row::get));
      }
    }
  }

  private static CSVFormat format(Layout layout) {
    return CSVFormat.DEFAULT
        .builder()
        .setDelimiter(layout.delimiter())
        .setRecordSeparator("\n")
        .get();
  }
}
