package withers.ingest;

import withers.ingest.rows.Row;

/**
 * A row that knows where in the whole file it stands.
 *
 * @param record its number among the unrecognised records of the file, from 0
 * @param line on which it starts
 */
record UnreadRow(Row row, int record, long line) implements Row {

  @Override
  public int size() {
    return row.size();
  }

  @Override
  public String cell(int place) {
    return row.cell(place);
  }

  @Override
  public String text() {
    return row.text();
  }
}
