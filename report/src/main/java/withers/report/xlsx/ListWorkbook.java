package withers.report.xlsx;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import withers.report.list.Cautions;
import withers.report.list.FollowUpList;
import withers.report.table.Column;
import withers.report.table.ListTable;
import withers.report.text.Texts;
import withers.text.HarmlessText;

/**
 * A list as a workbook: a sheet with a row for each follow-up, and one with what to keep in mind.
 * Every cell is text, chip numbers above all: as numbers they would lose digits.
 */
public final class ListWorkbook {

  private static final String APPLICATION = "Withers";

  /**
   * The format asks for digits, a dot, digits; the program's own version has nothing to say here.
   */
  private static final String APPLICATION_VERSION = "1.0";

  private static final double NOTES_WIDTH = 100;
  private static final String HEADER_FILL = "E9F1F0";
  private static final String ANSWER_FILL = "FFF3CF";

  private final Texts texts;

  public ListWorkbook(Texts texts) {
    this.texts = texts;
  }

  /** The workbook's bytes. */
  public byte[] of(FollowUpList list) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (Workbook workbook = new Workbook(bytes, APPLICATION, APPLICATION_VERSION)) {
      Worksheet followUps = workbook.newWorksheet(texts.say("sheet.list"));
      followUps(followUps, list);
      notes(workbook.newWorksheet(texts.say("sheet.notes")), list);
      new AnswerCells(followUps, workbook.newWorksheet(texts.say("sheet.words")), texts)
          .prepare(list.size());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private void followUps(Worksheet sheet, FollowUpList list) {
    header(sheet);
    int last = 0;
    for (List<String> cells : (Iterable<List<String>>) ListTable.rows(list, texts)::iterator) {
      row(sheet, ++last, cells);
    }
    sheet.setAutoFilter(0, 0, last, Column.values().length - 1);
    sheet.freezePane(1, 1);
    sheet.repeatRows(0);
    sheet.pageOrientation("landscape");
    sheet.fitToWidth((short) 1);
    sheet.fitToHeight((short) 0);
  }

  private void header(Worksheet sheet) {
    for (Column column : Column.values()) {
      int at = column.ordinal();
      sheet.width(at, column.width());
      sheet.value(0, at, column.heading(texts));
      sheet
          .style(0, at)
          .bold()
          .fillColor(column.isWritten() ? ANSWER_FILL : HEADER_FILL)
          .wrapText(true)
          .set();
    }
  }

  private static void row(Worksheet sheet, int row, List<String> cells) {
    int first = 0;
    for (int column = 0; column <= cells.size(); column++) {
      if (column == cells.size() || cells.get(column).isEmpty()) {
        texts(sheet, row, first, cells.subList(first, column));
        first = column + 1;
      }
    }
  }

  /**
   * Neighbouring cells of text: "@" is the format that keeps what is typed into it as it is.
   * Formatting them together takes no longer than formatting one.
   */
  private static void texts(Worksheet sheet, int row, int first, List<String> texts) {
    if (!texts.isEmpty()) {
      for (int i = 0; i < texts.size(); i++) {
        sheet.value(row, first + i, texts.get(i));
      }
      sheet
          .range(row, first, row, first + texts.size() - 1)
          .style()
          .format("@")
          .wrapText(true)
          .verticalAlignment("top")
          .set();
    }
  }

  private void notes(Worksheet sheet, FollowUpList list) {
    sheet.width(0, NOTES_WIDTH);
    List<String> notes = notes(list);
    for (int row = 0; row < notes.size(); row++) {
      texts(sheet, row, 0, List.of(HarmlessText.of(notes.get(row))));
    }
    sheet.style(0, 0).bold().set();
  }

  private List<String> notes(FollowUpList list) {
    String name = list.organisation().name();
    List<String> notes =
        new java.util.ArrayList<>(
            List.of(
                texts.say("list.page", name, texts.date(list.asOf())),
                texts.say("list.confidential", name)));
    notes.addAll(Cautions.general(texts));
    notes.addAll(answering());
    notes.add(texts.say("list.footer", list.run()));
    return notes;
  }

  private List<String> answering() {
    List<Column> written = Column.written().toList();
    return List.of(
        texts.say(
            "sheet.answer",
            written.get(0).heading(texts),
            written.get(written.size() - 1).heading(texts)),
        texts.say("sheet.answer.part"),
        texts.say("sheet.answer.people"),
        texts.say("sheet.unlock", AnswerCells.UNLOCKED_BY));
  }
}
