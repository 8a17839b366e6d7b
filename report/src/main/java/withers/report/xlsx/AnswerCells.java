package withers.report.xlsx;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.dhatim.fastexcel.DataValidationErrorStyle;
import org.dhatim.fastexcel.ProtectionOption;
import org.dhatim.fastexcel.Range;
import org.dhatim.fastexcel.SheetProtectionOption;
import org.dhatim.fastexcel.VisibilityState;
import org.dhatim.fastexcel.Worksheet;
import withers.report.table.Column;
import withers.report.text.Texts;

/**
 * The cells of a sheet that its reader fills in: they alone can be written in. What is chosen from
 * a list has its words in a sheet of their own, since a list within a rule holds 255 characters
 * only.
 */
final class AnswerCells {

  /** Keeps slips of the hand out, not people: it is told in the workbook. */
  static final String UNLOCKED_BY = "withers";

  /** Columns may be made wider, and rows filtered. */
  private static final Set<SheetProtectionOption> PROTECTED =
      EnumSet.complementOf(
          EnumSet.of(
              SheetProtectionOption.AUTO_FILTER,
              SheetProtectionOption.FORMAT_COLUMNS,
              SheetProtectionOption.FORMAT_ROWS,
              SheetProtectionOption.SELECT_LOCKED_CELLS,
              SheetProtectionOption.SELECT_UNLOCKED_CELLS));

  /** Shown so in every country, and turned into a day by every spreadsheet. */
  private static final String DAY = "yyyy-mm-dd";

  private final Worksheet sheet;
  private final Worksheet words;
  private final Texts texts;

  /**
   * @param words a sheet for the words to choose from
   */
  AnswerCells(Worksheet sheet, Worksheet words, Texts texts) {
    this.sheet = sheet;
    this.words = words;
    this.texts = texts;
  }

  /**
   * Prepares them.
   *
   * @param rows how many rows below the header can be answered
   */
  void prepare(int rows) {
    if (rows > 0) {
      Column.written().forEach(column -> unlock(column, rows));
      choose(Column.OUTCOME, texts.sheet().outcomes(), 0, rows);
      choose(Column.CHANNEL, texts.sheet().channels(), 1, rows);
    }
    words.setVisibilityState(VisibilityState.HIDDEN);
    sheet.protect(UNLOCKED_BY, PROTECTED);
  }

  private void unlock(Column column, int rows) {
    cells(column, rows)
        .style()
        .format(column == Column.ON || column == Column.AGAIN ? DAY : "@")
        .wrapText(true)
        .verticalAlignment("top")
        .protectionOption(ProtectionOption.LOCKED, false)
        .set();
  }

  private void choose(Column column, List<String> choices, int at, int rows) {
    for (int row = 0; row < choices.size(); row++) {
      words.value(row, at, choices.get(row));
    }
    cells(column, rows)
        .validateWithList(words.range(0, at, choices.size() - 1, at))
        .errorStyle(DataValidationErrorStyle.STOP)
        .showErrorMessage(true)
        .errorTitle(column.heading(texts))
        .error(texts.say("sheet.choose"));
  }

  private Range cells(Column column, int rows) {
    return sheet.range(1, column.ordinal(), rows, column.ordinal());
  }
}
