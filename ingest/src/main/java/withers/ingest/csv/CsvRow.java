package withers.ingest.csv;

import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** A row of a file. */
public final class CsvRow {

  private final CSVRecord record;
  private final long line;
  private final CSVFormat format;

  CsvRow(CSVRecord record, long line, CSVFormat format) {
    this.record = record;
    this.line = line;
    this.format = format;
  }

  /** The line on which the row starts, from 1. */
  public long line() {
    return line;
  }

  /** How many cells it has. */
  public int size() {
    return record.size();
  }

  /** A cell, without white space at its ends. */
  public String cell(int place) {
    return record.get(place).strip();
  }

  /** The row as text, to be kept for people to put right. */
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
