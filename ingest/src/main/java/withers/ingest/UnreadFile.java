package withers.ingest;

import java.util.List;
import java.util.Optional;
import withers.ingest.known.UnreadPlaces;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.rows.Rows;

/** The rows that a reader makes of what is left of a file. */
record UnreadFile(Rows rows, UnreadPlaces places) implements Rows {

  @Override
  public Header header() {
    return rows.header();
  }

  @Override
  public Optional<Row> next() {
    return rows.next().map(this::placed);
  }

  private UnreadRow placed(Row row) {
    int record = places.find(row.line());
    return new UnreadRow(row, record, places.line(record));
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
