package withers.ingest.xlsx;

/**
 * How large the parts of a spreadsheet may be. Columns, rows and the length of a text are those of
 * the programs that write spreadsheets; the others are far above what an export needs.
 */
final class Bounds {

  static final int COLUMNS = 16_384;
  static final int ROWS = 1_048_576;

  /** Characters of a cell's text, or of a formula. */
  static final int TEXT = 32_767;

  /** Characters of a number: a double has at most 25, but some programs write zeros. */
  static final int NUMBER = 400;

  /** Ranges of formulas that fill several cells, each of which is looked up for every cell. */
  static final int FORMULA_RANGES = 1_000;

  /** Rows of all merged ranges together. */
  static final int MERGED_ROWS = 200_000;

  static final int SHEETS = 1_000;
  static final int DEPTH = 64;

  /** Bytes between two tags. */
  static final int BETWEEN_TAGS = 1 << 20;

  /** Bytes of what is held in memory: a list of parts, or of formats. */
  static final long SMALL_PART = 16L << 20;

  /** Bytes of the texts that cells share, which are held in memory. */
  static final long SHARED_TEXTS = 128L << 20;

  static final long SHEET = 8L << 30;

  private Bounds() {}
}
