package withers.ingest.csv;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.FileFormat;
import withers.ingest.profile.TextFormat;
import withers.ingest.rows.Row;

/** Reads CSV in tests. */
final class TestCsv {

  private TestCsv() {}

  /** The header's names, then the cells of each row; what the format does not say is found out. */
  static List<List<String>> read(Path file, TextFormat text, List<String> wanted) {
    FileFormat format = new FileFormat(text, DatePattern.of("yyyy-MM-dd"));
    ExportFile inspected = ExportFile.inspect(file, format);
    List<List<String>> rows = new ArrayList<>();
    try (CsvFile csv = CsvFile.open(inspected, format, wanted, count -> {})) {
      rows.add(csv.header().names());
      for (Optional<Row> row = csv.next(); row.isPresent(); row = csv.next()) {
        rows.add(cells(row.get()));
      }
    }
    return rows;
  }

  static List<String> cells(Row row) {
    return IntStream.range(0, row.size()).mapToObj(row::cell).toList();
  }

  static Path write(Path folder, byte[] bytes) {
    try {
      return Files.write(folder.resolve("export.csv"), bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
