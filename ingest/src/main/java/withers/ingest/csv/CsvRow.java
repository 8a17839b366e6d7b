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

  CsvRow(CSVRecord record, long line, CSVFormat format) {
    this.record = record;
    this.line = line;
    this.format = format;
  }

  @Override
  public long line() {
    return line;
  }

  @Override
  public int size() {
    return record.size();
  }

  @Override
  public String cell(int place) {
    return record.get(place).strip();
  }

  @Override
  public String text() {
    return format.format((Object[]) record.values());
  }

  List<String> cells() {
    return record.toList();
  }

  boolean isBlank() {
    return record.size() == 1 && record.get(0).isBlank();
  }
}
