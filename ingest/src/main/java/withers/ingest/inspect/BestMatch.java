package withers.ingest.inspect;

import java.util.Arrays;

/**
 * The assignment of rows to columns with the highest sum, none of either used twice; what is left
 * over counts nothing. Kuhn's method with potentials (H. W. Kuhn, "The Hungarian method for the
 * assignment problem", Naval Research Logistics Quarterly 2, 1955).
 */
final class BestMatch {

  private static final int FREE = -1;

  private final double[][] cost;
  private final int rows;
  private final int columns;
  private final double[] rowPotential;
  private final double[] columnPotential;
  private final int[] rowOf;

  private BestMatch(double[][] gain) {
    this.rows = gain.length;
    int real = rows == 0 ? 0 : gain[0].length;
    // A column of its own for each row, which stands for none at all.
    this.columns = real + rows;
    this.cost = new double[rows][columns];
    for (int r = 0; r < rows; r++) {
      for (int c = 0; c < real; c++) {
        cost[r][c] = -gain[r][c];
      }
    }
    this.rowPotential = new double[rows];
    this.columnPotential = new double[columns + 1];
    this.rowOf = new int[columns + 1];
    Arrays.fill(rowOf, FREE);
  }

  /**
   * The best assignment.
   *
   * @param gain what a row gains from a column
   * @return for each row its column, or -1 for none
   */
  static int[] of(double[][] gain) {
    BestMatch match = new BestMatch(gain);
    for (int row = 0; row < match.rows; row++) {
      match.place(row);
    }
    return match.result(gain.length == 0 ? 0 : gain[0].length);
  }

  private int[] result(int real) {
    int[] columnOf = new int[rows];
    Arrays.fill(columnOf, FREE);
    for (int c = 0; c < real; c++) {
      if (rowOf[c] != FREE) {
        columnOf[rowOf[c]] = c;
      }
    }
    return columnOf;
  }

  /** Finds the cheapest chain of moves that makes room for one more row. */
  private void place(int row) {
    int start = columns; // a stand-in for the column of the row that comes in
    rowOf[start] = row;
    double[] least = new double[columns + 1];
    int[] before = new int[columns + 1];
    boolean[] done = new boolean[columns + 1];
    Arrays.fill(least, Double.POSITIVE_INFINITY);
    int at = start;
    while (rowOf[at] != FREE) {
      done[at] = true;
      at = step(at, least, before, done);
    }
    while (at != start) {
      rowOf[at] = rowOf[before[at]];
      at = before[at];
    }
    rowOf[start] = FREE;
  }

  private int step(int at, double[] least, int[] before, boolean[] done) {
    int row = rowOf[at];
    int next = FREE;
    for (int c = 0; c < columns; c++) {
      if (!done[c]) {
        double reduced = cost[row][c] - rowPotential[row] - columnPotential[c];
        if (reduced < least[c]) {
          least[c] = reduced;
          before[c] = at;
        }
        next = next == FREE || least[c] < least[next] ? c : next;
      }
    }
    shift(least[next], least, done);
    return next;
  }

  private void shift(double by, double[] least, boolean[] done) {
    for (int c = 0; c <= columns; c++) {
      if (done[c]) {
        rowPotential[rowOf[c]] += by;
        columnPotential[c] -= by;
      } else {
        least[c] -= by;
      }
    }
  }
}
