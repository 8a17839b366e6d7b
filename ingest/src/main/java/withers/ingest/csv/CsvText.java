package withers.ingest.csv;

import java.util.List;
import org.apache.commons.csv.CSVFormat;

/** Writes CSV (RFC 4180). */
public final class CsvText {

  private CsvText() {}

  /** A line with its end. */
  public static String line(List<String> cells) {
    return CSVFormat.RFC4180.format(cells.toArray()) + "\r\n";
  }
}
