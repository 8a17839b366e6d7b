package withers.ingest.csv;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import org.duckdb.DuckDBDriver;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.ingest.profile.TextFormat;
import withers.ingest.sniff.Quoting;

/**
 * Two other readers read the same cells, where they read the same dialect: FastCSV 4.0.0, and
 * DuckDB 2.0 where all lines end alike. Ours finds the delimiter out, the others are told it. Cells
 * are compared without white space at their ends and rows of nothing are left out, as we read them.
 * {@code -Dcsv.files=1000} compares so many files.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class OtherReadersTest {

  private static final int FILES = Integer.getInteger("csv.files", 100);

  @TempDir Path folder;

  @Test
  void FastCSV_reads_the_same_cells() throws IOException {
    for (long seed = 0; seed < FILES; seed++) {
      SeededCsv csv = SeededCsv.of(seed);
      Path file = TestCsv.write(folder, csv.bytes());

      assertThat(ours(file, csv)).as("seed %d", seed).isEqualTo(byFastCsv(file, csv));
    }
  }

  @Test
  void DuckDB_reads_the_same_cells() throws SQLException {
    int compared = 0;
    try (Connection db = new DuckDBDriver().connect("jdbc:duckdb:", new Properties())) {
      for (long seed = 0; seed < FILES; seed++) {
        SeededCsv csv = SeededCsv.of(seed);
        if (!csv.lineEnd().isEmpty()) {
          Path file = TestCsv.write(folder, csv.bytes());
          assertThat(ours(file, csv)).as("seed %d", seed).isEqualTo(byDuckDb(db, file, csv));
          compared++;
        }
      }
    }
    assertThat(compared).isGreaterThan(FILES / 2);
  }

  /** So one that was read before need not be read again. */
  @Test
  void what_a_row_says_does_not_depend_on_other_rows() {
    for (long seed = 0; seed < FILES; seed++) {
      SeededCsv csv = SeededCsv.of(seed);
      List<List<String>> together = ours(TestCsv.write(folder, csv.bytes()), csv);
      List<List<String>> alone = new ArrayList<>(List.of(together.get(0)));
      for (int row = 1; row < csv.lines().size(); row++) {
        List<List<String>> read = ours(TestCsv.write(folder, csv.only(row)), csv);
        alone.addAll(read.subList(1, read.size()));
      }

      assertThat(alone).as("seed %d", seed).isEqualTo(together);
    }
  }

  private static List<List<String>> ours(Path file, SeededCsv csv) {
    TextFormat format =
        new TextFormat(Optional.empty(), Optional.of(Quoting.DOUBLE), Optional.empty());
    return TestCsv.read(file, format, csv.columns());
  }

  private static List<List<String>> byFastCsv(Path file, SeededCsv csv) throws IOException {
    List<List<String>> rows = new ArrayList<>();
    try (CsvReader<CsvRecord> reader =
        CsvReader.builder()
            .fieldSeparator(csv.delimiter().sign())
            .detectBomHeader(true)
            .ofCsvRecord(file)) {
      reader.forEach(record -> add(rows, record.getFields()));
    }
    return rows;
  }

  private static List<List<String>> byDuckDb(Connection db, Path file, SeededCsv csv)
      throws SQLException {
    String sql =
        """
        SELECT * FROM read_csv('%s', delim = '%s', quote = '"', escape = '"', header = false,
          all_varchar = true, auto_detect = false, null_padding = false, nullstr = '\\0never',
          new_line = '%s', columns = {%s})
        """
            .formatted(
                file,
                csv.delimiter().sign(),
                csv.lineEnd().equals("\n") ? "\\n" : "\\r\\n",
                columns(csv.columns().size()));
    List<List<String>> rows = new ArrayList<>();
    try (Statement statement = db.createStatement();
        ResultSet result = statement.executeQuery(sql)) {
      while (result.next()) {
        add(rows, cells(result, csv.columns().size()));
      }
    }
    return rows;
  }

  private static String columns(int count) {
    List<String> columns = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      columns.add("'c%d': 'VARCHAR'".formatted(i));
    }
    return String.join(", ", columns);
  }

  private static List<String> cells(ResultSet result, int count) throws SQLException {
    List<String> cells = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      String cell = result.getString(i);
      cells.add(cell == null ? "" : cell);
    }
    return cells;
  }

  private static void add(List<List<String>> rows, List<String> cells) {
    List<String> stripped = cells.stream().map(String::strip).toList();
    if (stripped.stream().anyMatch(cell -> !cell.isEmpty())) {
      rows.add(stripped);
    }
  }
}
