package withers.ingest.xlsx;

/**
 * Where a cell is.
 *
 * @param column from 0
 * @param row from 1
 */
record CellPlace(int column, int row) {

  private static final int LETTERS = 'Z' - 'A' + 1;

  /**
   * Reads a place such as C12.
   *
   * @throws IllegalArgumentException when it is none that a sheet has
   */
  static CellPlace read(String text) {
    int column = 0;
    int i = 0;
    for (; i < text.length() && isLetter(text.charAt(i)) && i < 4; i++) {
      column = column * LETTERS + (text.charAt(i) - 'A' + 1);
    }
    if (column < 1 || column > Bounds.COLUMNS) {
      throw new IllegalArgumentException("No place of a cell: " + text);
    }
    return new CellPlace(column - 1, row(text.substring(i)));
  }

  private static boolean isLetter(char c) {
    return c >= 'A' && c <= 'Z';
  }

  /**
   * Reads the number of a row.
   *
   * @throws IllegalArgumentException when it is none that a sheet has
   */
  static int row(String text) {
    if (text.matches("[1-9][0-9]{0,6}") && Integer.parseInt(text) <= Bounds.ROWS) {
      return Integer.parseInt(text);
    }
    throw new IllegalArgumentException("No row of a sheet: " + text);
  }
}
