package withers.ingest.quarantine;

import withers.ingest.translate.Reject;

/**
 * A row that could not be taken. The text form never shows the row.
 *
 * @param line line on which the row starts, from 1
 * @param text the row as the file has it
 */
public record QuarantinedRow(String file, long line, Reject reject, String text) {

  @Override
  public String toString() {
    return "QuarantinedRow[%s, line %d, %s]".formatted(file, line, reject.code());
  }
}
