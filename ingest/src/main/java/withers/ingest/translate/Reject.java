package withers.ingest.translate;

/**
 * Why a row can't be taken.
 *
 * @param column header of the column that it is about, or empty when it is about the whole row
 * @param message what was expected and what was found, without anything that is in the row
 */
public record Reject(Code code, String column, String message) {

  /** The reasons. Their names are stable: quarantine files show them. */
  public enum Code {
    WRONG_NUMBER_OF_CELLS,
    NO_KEY,
    KEY_TOO_LONG,
    NO_NUMBER,
    NUMBER_REFUSED,
    RANGE_REFUSED,
    DAY_REFUSED,
    DAY_MISSING,
    WORD_UNKNOWN,
    WORD_MISSING,
    CELL_UNREADABLE,
    REFERENCE_UNKNOWN,
    REFERENCE_AMBIGUOUS,
    FOLLOW_UP_UNKNOWN,
    OTHER_LIST,
    ROLE_REFUSED
  }
}
