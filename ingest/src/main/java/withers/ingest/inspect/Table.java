package withers.ingest.inspect;

import java.util.List;

/**
 * The cells of a file under its header, as far as they are looked at.
 *
 * @param file the file's name
 * @param header the header's cells as they stand in the file
 * @param rows rows as wide as the header, cells without white space at their ends
 * @param isWhole whether these are all rows of the file
 */
public record Table(String file, List<String> header, List<List<String>> rows, boolean isWhole) {

  public Table {
    header = List.copyOf(header);
    rows = List.copyOf(rows);
  }

  /** Its text form never shows what is in it. */
  @Override
  public String toString() {
    return "Table of %d columns and %d rows (%s)".formatted(header.size(), rows.size(), file);
  }
}
