package withers.ingest.join;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.rows.Rows;
import withers.source.InputRefusedException;

/** The rows of an export, each with what joined files say of the keys that it holds. */
public final class JoinedRows implements Rows {

  private final Rows rows;
  private final List<JoinTable> tables;
  private final List<Integer> references = new ArrayList<>();
  private final Header header;

  private JoinedRows(Rows rows, List<JoinTable> tables) {
    this.rows = rows;
    this.tables = List.copyOf(tables);
    List<String> names = new ArrayList<>(rows.header().names());
    for (JoinTable table : tables) {
      Header before = new Header(rows.header().file(), rows.header().line(), names);
      before.require(List.of(table.on()));
      references.add(before.place(table.on()));
      names.addAll(table.headers());
    }
    this.header = new Header(rows.header().file(), rows.header().line(), names);
  }

  /**
   * Joins rows with tables, in their order: a table's columns can refer to a later one. Closing it
   * closes the rows.
   *
   * @throws InputRefusedException when a column is missing that refers to a table; the rows are
   *     closed then
   */
  public static Rows of(Rows rows, List<JoinTable> tables) {
    try {
      return new JoinedRows(rows, tables);
    } catch (InputRefusedException refused) {
      rows.close();
      throw refused;
    }
  }

  @Override
  public Header header() {
    return header;
  }

  @Override
  public Optional<Row> next() {
    return rows.next().map(this::joined);
  }

  private Row joined(Row row) {
    int own = rows.header().size();
    List<JoinedCell> cells = new ArrayList<>();
    for (int i = 0; i < tables.size(); i++) {
      int place = references.get(i);
      boolean isOwn = place < own;
      boolean isWhole = row.size() == own;
      JoinedCell reference =
          isOwn && isWhole
              ? new JoinedCell(row.cell(place), row.typed(place))
              : isOwn ? JoinedCell.EMPTY : cells.get(place - own);
      cells.addAll(tables.get(i).find(reference.text(), reference.typed()));
    }
    return new JoinedRow(row, own, cells);
  }

  @Override
  public List<String> remarks() {
    return rows.remarks();
  }

  @Override
  public void close() {
    rows.close();
  }
}
