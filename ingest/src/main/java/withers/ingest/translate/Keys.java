package withers.ingest.translate;

import java.util.List;
import java.util.stream.Collectors;
import withers.ingest.rows.Row;

/** Reads a record's key from one column or several. */
public final class Keys {

  private static final String BETWEEN = "|";
  private static final String ESCAPE = "\\";

  private Keys() {}

  /** The key's text; empty when no column says anything. No two lists of cells give one text. */
  static String read(List<Cell> columns, Row row) {
    return columns.size() == 1
        ? columns.get(0).in(row)
        : joined(columns.stream().map(column -> column.in(row)).toList());
  }

  /** The same of the cells themselves. */
  public static String of(List<String> cells) {
    return cells.size() == 1 ? cells.get(0) : joined(cells);
  }

  private static String joined(List<String> cells) {
    boolean blank = cells.stream().allMatch(String::isEmpty);
    return blank ? "" : cells.stream().map(Keys::escaped).collect(Collectors.joining(BETWEEN));
  }

  private static String escaped(String cell) {
    return cell.replace(ESCAPE, ESCAPE + ESCAPE).replace(BETWEEN, ESCAPE + BETWEEN);
  }
}
