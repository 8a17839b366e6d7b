package withers.ingest.quarantine;

import java.util.ArrayList;
import java.util.List;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.translate.Reject;

/**
 * A row that could not be taken, as it stands in a quarantine file. The text form never shows the
 * row.
 *
 * @param file name of the export's file
 * @param line line of the export's file on which the row starts
 * @param original the row as the export's file has it
 * @param header the headers of the export's columns
 * @param cells guarded; one for each column, then those beyond the columns
 */
public record QuarantinedRow(
    String file,
    String line,
    Reject reject,
    String original,
    List<String> header,
    List<String> cells) {

  public QuarantinedRow {
    header = List.copyOf(header);
    cells = List.copyOf(cells);
  }

  /**
   * A row of an export, or one that comes from quarantine and goes back there: its place in the
   * export and its original text stay.
   *
   * @param file name of the file at hand
   */
  public static QuarantinedRow of(String file, Header header, Row row, Reject reject) {
    if (row instanceof CorrectedRow corrected) {
      return new QuarantinedRow(
          corrected.file(),
          corrected.lineOfExport(),
          reject,
          corrected.text(),
          header.names(),
          corrected.guarded());
    }
    return new QuarantinedRow(
        file,
        Long.toString(row.line()),
        reject,
        row.text().strip(),
        header.names(),
        guarded(header, row));
  }

  private static List<String> guarded(Header header, Row row) {
    List<String> cells = new ArrayList<>();
    for (int place = 0; place < row.size(); place++) {
      String cell = row.cell(place);
      boolean beyond = place >= header.size();
      cells.add(beyond && cell.isEmpty() ? QuarantineColumns.EMPTY : Verbatim.cell(cell));
    }
    while (cells.size() < header.size()) {
      cells.add(QuarantineColumns.MISSING);
    }
    return cells;
  }

  int beyond() {
    return cells.size() - header.size();
  }

  @Override
  public String toString() {
    return "QuarantinedRow[%s, line %s, %s]".formatted(file, line, reject.code());
  }
}
