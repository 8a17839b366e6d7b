package withers.ingest.profile;

import java.util.List;
import java.util.Optional;

/**
 * How a source writes its files.
 *
 * @param text how it writes text files
 * @param sheet which sheet of a spreadsheet holds the rows; empty for the only one that has any
 * @param totals words that name rows of sums, which hold no record
 * @param date how days are written
 */
public record FileFormat(
    TextFormat text, Optional<String> sheet, List<String> totals, DatePattern date) {

  public FileFormat {
    totals = List.copyOf(totals);
  }

  /** The same, but for the sheet. */
  public FileFormat onSheet(Optional<String> other) {
    return new FileFormat(text, other, totals, date);
  }

  /** Of text files without totals. */
  public FileFormat(TextFormat text, DatePattern date) {
    this(text, Optional.empty(), List.of(), date);
  }
}
