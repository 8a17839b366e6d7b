package withers.ingest.join;

import java.util.List;
import withers.ingest.rows.Row;
import withers.ingest.rows.Typed;

/**
 * A row of an export with the cells of the rows that it refers to after its own.
 *
 * @param own how many cells the header of the export's own file has
 */
record JoinedRow(Row row, int own, List<JoinedCell> joined) implements Row {

  @Override
  public long line() {
    return row.line();
  }

  /** A row that is too short or too long on its own is so with others, too. */
  @Override
  public int size() {
    return row.size() < own ? row.size() : row.size() + joined.size();
  }

  @Override
  public String cell(int place) {
    if (place < own) {
      return row.cell(place);
    }
    int after = place - own;
    return after < joined.size() ? joined.get(after).text() : row.cell(place - joined.size());
  }

  @Override
  public Typed typed(int place) {
    int after = place - own;
    return after >= 0 && after < joined.size() ? joined.get(after).typed() : row.typed(place);
  }

  @Override
  public boolean isTyped() {
    return row.isTyped()
        || joined.stream().anyMatch(cell -> cell.typed().kind() != Typed.Kind.TEXT);
  }

  @Override
  public String text() {
    return row.text();
  }

  @Override
  public String toString() {
    return "JoinedRow[line " + line() + "]";
  }
}
