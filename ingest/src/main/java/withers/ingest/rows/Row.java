package withers.ingest.rows;

/**
 * A row of an export, whatever kind of file holds it. What a row says depends on its own text, the
 * header and the profile alone, never on other rows: so one that was read before need not be read
 * again. Its text form never shows what is in it.
 */
public interface Row {

  /** The line, or the spreadsheet's row, on which it starts, from 1. */
  long line();

  /** How many cells it has. */
  int size();

  /** A cell, from 0, without white space at its ends. */
  String cell(int place);

  /** What a cell holds beside its text. */
  default Typed typed(int place) {
    return Typed.TEXT;
  }

  /** Whether any cell holds more than a text. */
  default boolean isTyped() {
    return false;
  }

  /** The row as text, to be kept for people to put right. */
  String text();
}
