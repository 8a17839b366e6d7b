package withers.ingest.fuzz;

import java.util.Optional;
import withers.ingest.rows.Row;
import withers.ingest.rows.Rows;

/** Reads an open file to its end, and tells everything that it says. */
final class ReadRows {

  private ReadRows() {}

  static String told(Rows rows) {
    StringBuilder told = new StringBuilder(rows.header().names().toString());
    long line = 0;
    for (Optional<Row> next = rows.next(); next.isPresent(); next = rows.next()) {
      Row row = next.get();
      Law.require(row.line() > line, "rows come in the order of their lines");
      line = row.line();
      tell(row, told);
    }
    Law.require(rows.next().isEmpty(), "the end stays the end");
    return told.append(rows.remarks()).toString();
  }

  private static void tell(Row row, StringBuilder told) {
    told.append('\n').append(row.line()).append(' ').append(row.text());
    for (int i = 0; i < row.size(); i++) {
      String cell = row.cell(i);
      Law.require(cell.equals(cell.strip()), "a cell has no white space at its ends");
      Law.require(cell.indexOf(0) < 0, "a cell holds no NUL");
      told.append('|').append(cell).append(' ').append(row.typed(i));
    }
  }
}
