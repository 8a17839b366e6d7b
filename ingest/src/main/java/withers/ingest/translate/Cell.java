package withers.ingest.translate;

import withers.ingest.csv.CsvRow;

/** Where a value stands in a row. */
@FunctionalInterface
interface Cell {

  /** The text there, stripped; empty when there is none. */
  String in(CsvRow row);

  /** A column that the file does not have. */
  static String nothing(CsvRow row) {
    return "";
  }
}
