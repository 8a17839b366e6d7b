package withers.ingest.quarantine;

import java.util.ArrayList;
import java.util.List;
import withers.ingest.rows.Row;
import withers.ingest.rows.Typed;

/** A row of a quarantine file, read as the row of the export that it stands for. */
final class CorrectedRow implements Row {

  private final Row row;
  private final int columns;
  private final int beyond;

  /**
   * @param row the row of the quarantine file
   * @param columns how many columns of the export it has
   */
  CorrectedRow(Row row, int columns) {
    this.row = row;
    this.columns = columns;
    this.beyond = cellsBeyond();
  }

  private int cellsBeyond() {
    int last = row.size() - 1;
    while (last >= end() && row.cell(last).isEmpty()) {
      last--;
    }
    return Math.max(0, last + 1 - end());
  }

  private int end() {
    return QuarantineColumns.OURS.size() + columns;
  }

  private String written(int place) {
    return place < row.size() ? row.cell(place) : "";
  }

  private String own(int place) {
    return Verbatim.undo(written(place)).strip();
  }

  private String exported(int place) {
    return written(QuarantineColumns.OURS.size() + place);
  }

  /** The line in the quarantine file: that is what was read. */
  @Override
  public long line() {
    return row.line();
  }

  /** Where cells are still missing, the row is still too short. */
  @Override
  public int size() {
    return beyond > 0 ? columns + beyond : columns - missing();
  }

  private int missing() {
    int missing = 0;
    for (int place = 0; place < columns; place++) {
      missing += exported(place).equals(QuarantineColumns.MISSING) ? 1 : 0;
    }
    return missing;
  }

  @Override
  public String cell(int place) {
    String cell = exported(place);
    return QuarantineColumns.isMark(cell) ? "" : Verbatim.undo(cell).strip();
  }

  @Override
  public Typed typed(int place) {
    int at = QuarantineColumns.OURS.size() + place;
    return at < row.size() ? row.typed(at) : Typed.TEXT;
  }

  @Override
  public boolean isTyped() {
    return row.isTyped();
  }

  /** The row as the export had it. */
  @Override
  public String text() {
    return own(QuarantineColumns.ORIGINAL);
  }

  String source() {
    return own(QuarantineColumns.SOURCE);
  }

  String exportDate() {
    return own(QuarantineColumns.EXPORT_DATE);
  }

  String file() {
    return own(QuarantineColumns.FILE);
  }

  String lineOfExport() {
    return own(QuarantineColumns.LINE);
  }

  /** Its cells as a quarantine file writes them. */
  List<String> guarded() {
    List<String> cells = new ArrayList<>();
    for (int place = 0; place < columns + beyond; place++) {
      String cell = exported(place);
      boolean isEmptyBeyond = place >= columns && cell.isEmpty();
      cells.add(
          isEmptyBeyond
              ? QuarantineColumns.EMPTY
              : QuarantineColumns.isMark(cell) ? cell : Verbatim.cell(cell(place)));
    }
    return cells;
  }

  /** Whether somebody has cleared the whole line. */
  boolean isCleared() {
    for (int place = 0; place < row.size(); place++) {
      if (!row.cell(place).isEmpty()) {
        return false;
      }
    }
    return true;
  }
}
