package withers.ingest.csv;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Writes CSV (RFC 4180). */
public final class CsvText {

  private CsvText() {}

  /**
   * The rows of such a text, its header among them.
   *
   * @throws IllegalArgumentException when it is not CSV of this kind
   */
  public static List<List<String>> rows(String text) {
    try (CSVParser parser = CSVFormat.RFC4180.parse(new StringReader(text))) {
      return parser.stream().map(CSVRecord::toList).toList();
    } catch (IOException | UncheckedIOException wrong) {
      throw new IllegalArgumentException("Expected CSV, but found other text", wrong);
    }
  }

  /** A line with its end. */
  public static String line(List<String> cells) {
    return CSVFormat.RFC4180.format(cells.toArray()) + "\r\n";
  }
}
