package withers.ingest.translate;

import withers.ingest.rows.Row;

/** Where a value stands in a row. */
@FunctionalInterface
interface Cell {

  /** The text there, stripped; empty when there is none. */
  String in(Row row);

  /** A column that the file does not have. */
  static String nothing(Row row) {
    return "";
  }
}
