package withers.ingest.csv;

import java.util.List;
import org.apache.commons.csv.CSVRecord;

/**
 * How many cells rows have.
 *
 * @param header cells of the header
 * @param named those up to the last that has a name: a row may leave out what has none
 * @param most a row may have so many if those beyond the header's are empty
 */
record RowWidth(int header, int named, int most) {

  /** Before the header is read. */
  static final RowWidth UNKNOWN = new RowWidth(0, 0, 0);

  /**
   * Under a header.
   *
   * @param spare empty cells that rows have beyond
   */
  static RowWidth under(List<String> names, int spare) {
    int named = names.size();
    while (named > 0 && names.get(named - 1).isBlank()) {
      named--;
    }
    return new RowWidth(names.size(), named, names.size() + spare);
  }

  /** How many cells a record counts as. */
  int of(CSVRecord record) {
    return record.size() >= named && record.size() <= most && isBlankBeyond(record)
        ? header
        : record.size();
  }

  private boolean isBlankBeyond(CSVRecord record) {
    for (int i = header; i < record.size(); i++) {
      if (!record.get(i).isBlank()) {
        return false;
      }
    }
    return true;
  }
}
