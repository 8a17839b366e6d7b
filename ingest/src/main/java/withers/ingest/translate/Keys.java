package withers.ingest.translate;

import java.util.List;
import withers.ingest.rows.Row;

/** Reads a record's key from one column or several. */
final class Keys {

  private static final String BETWEEN = "|";
  private static final String ESCAPE = "\\";

  private Keys() {}

  /** The key's text; empty when no column says anything. No two lists of cells give one text. */
  static String read(List<Cell> columns, Row row) {
    if (columns.size() == 1) {
      return columns.get(0).in(row);
    }
    StringBuilder key = new StringBuilder();
    boolean blank = true;
    for (Cell column : columns) {
      String part = column.in(row);
      blank &= part.isEmpty();
      key.append(key.length() > 0 || column != columns.get(0) ? BETWEEN : "");
      key.append(part.replace(ESCAPE, ESCAPE + ESCAPE).replace(BETWEEN, ESCAPE + BETWEEN));
    }
    return blank ? "" : key.toString();
  }
}
