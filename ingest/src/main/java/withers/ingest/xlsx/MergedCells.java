package withers.ingest.xlsx;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The cells that are merged with one above them: they look as if they said the same, and hold
 * nothing.
 */
final class MergedCells {

  private record Columns(int first, int last) {}

  private final Map<Integer, List<Columns>> byRow = new HashMap<>();
  private long size;

  /**
   * Adds a range such as A2:C4; ranges within one row say nothing about other rows.
   *
   * @throws IllegalArgumentException when it is none, or there are too many
   */
  void add(String range) {
    int colon = range.indexOf(':');
    if (colon < 0) {
      return;
    }
    CellPlace first = CellPlace.read(range.substring(0, colon));
    CellPlace last = CellPlace.read(range.substring(colon + 1));
    size += Math.max(0, last.row() - first.row());
    if (size > Bounds.MERGED_ROWS) {
      throw new IllegalArgumentException("Out of bounds: merged cells");
    }
    for (int row = first.row() + 1; row <= last.row(); row++) {
      byRow
          .computeIfAbsent(row, r -> new ArrayList<>(1))
          .add(new Columns(first.column(), last.column()));
    }
  }

  /** Whether a cell, from column 0 and row 1, is merged with one above it. */
  boolean covers(int column, int row) {
    return byRow.getOrDefault(row, List.of()).stream()
        .anyMatch(columns -> column >= columns.first && column <= columns.last);
  }
}
