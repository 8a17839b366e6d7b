package withers.ingest.quarantine;

import java.util.List;

/** How a quarantine file is laid out: our columns first, then the export's own. */
final class QuarantineColumns {

  /** Our columns, in their order. The export's own may have the same names: they come after. */
  static final List<String> OURS =
      List.of("source", "export-date", "file", "line", "column", "code", "reason", "original");

  static final int SOURCE = 0;
  static final int EXPORT_DATE = 1;
  static final int FILE = 2;
  static final int LINE = 3;
  static final int ORIGINAL = 7;

  /** Stands in a cell that the row did not reach. Who has put the row right clears it. */
  static final String MISSING = "(missing)";

  /** Stands in a cell beyond the export's columns that the row had, without anything in it. */
  static final String EMPTY = "(empty)";

  /** Stands for the header of a column that has none: a spreadsheet could leave it out. */
  static final String NO_NAME = "(no name)";

  private static final String BEYOND = "(beyond the columns: %d)";

  private QuarantineColumns() {}

  /**
   * Header of a column for cells beyond the export's own columns.
   *
   * @param place from 1
   */
  static String beyond(int place) {
    return BEYOND.formatted(place);
  }

  /** A column of the export, as the header of a quarantine file writes it. */
  static String written(String name) {
    return name.isEmpty() ? NO_NAME : Verbatim.cell(name);
  }

  /** A column of the export, as the export's own header writes it. */
  static String exported(String written) {
    return written.equals(NO_NAME) ? "" : Verbatim.undo(written);
  }

  static boolean isMark(String cell) {
    return cell.equals(MISSING) || cell.equals(EMPTY) || cell.equals(NO_NAME);
  }
}
