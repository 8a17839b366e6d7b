package withers.ingest.xlsx;

import java.util.List;
import withers.ingest.csv.CsvText;
import withers.ingest.rows.Row;
import withers.ingest.rows.Typed;

/** A row of a sheet, as wide as the header. */
final class XlsxRow implements Row {

  private final long line;
  private final List<CellReader.Content> cells;
  private final boolean typed;

  XlsxRow(long line, List<CellReader.Content> cells) {
    this.line = line;
    this.cells = List.copyOf(cells);
    this.typed = cells.stream().anyMatch(cell -> cell.typed().kind() != Typed.Kind.TEXT);
  }

  @Override
  public long line() {
    return line;
  }

  @Override
  public int size() {
    return cells.size();
  }

  @Override
  public String cell(int place) {
    return cells.get(place).text();
  }

  @Override
  public Typed typed(int place) {
    return cells.get(place).typed();
  }

  @Override
  public boolean isTyped() {
    return typed;
  }

  @Override
  public String text() {
    return CsvText.line(texts()).stripTrailing();
  }

  List<String> texts() {
    return cells.stream().map(CellReader.Content::text).toList();
  }

  boolean isBlank() {
    return cells.stream().allMatch(cell -> cell.text().isEmpty() && !cell.typed().isUnreadable());
  }
}
