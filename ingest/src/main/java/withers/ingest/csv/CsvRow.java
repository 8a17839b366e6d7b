package withers.ingest.csv;

import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import withers.ingest.rows.Row;

/** A row of a CSV file. */
final class CsvRow implements Row {

  private final CSVRecord record;
  private final long line;
  private final CSVFormat format;
  private final int size;

  CsvRow(CSVRecord record, long line, CSVFormat format, RowWidth width) {
    this.record = record;
    this.line = line;
    this.format = format;
    this.size = record.size() == width.header() ? record.size() : width.of(record);
  }

  @Override
  public long line() {
    return line;
  }

  @Override
  public int size() {
    return size;
  }

  @Override
  public String cell(int place) {
    return place < record.size() ? record.get(place).strip() : "";
  }

  @Override
  public String text() {
    return format.format((Object[]) record.values());
  }

  List<String> cells() {
    return record.toList();
  }

  boolean isBlankLine() {
    return record.size() == 1 && record.get(0).isBlank();
  }
}
