package withers.report.xlsx;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.util.Locale;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.report.Samples;
import withers.report.list.FollowUpList;
import withers.report.table.Column;
import withers.report.table.ListTable;
import withers.report.text.Texts;

/** What Apache POI, an independent reader, finds in the workbook. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ListWorkbookTest {
  private final Texts texts = Texts.in(Locale.UK);
  private final FollowUpList list = new Samples().lists(texts).get(1);

  @Test
  void holds_a_row_for_each_follow_up_and_question_below_the_headings() throws Exception {
    try (XSSFWorkbook workbook = read()) {
      XSSFSheet sheet = workbook.getSheet("Follow-ups");
      assertThat(sheet.getLastRowNum()).isEqualTo(8);
      for (int column = 0; column < Column.values().length; column++) {
        assertThat(text(sheet.getRow(0), column)).isEqualTo(ListTable.headings(texts).get(column));
        for (int row = 0; row < 8; row++) {
          assertThat(text(sheet.getRow(row + 1), column))
              .isEqualTo(ListTable.rows(list, texts).get(row).get(column));
        }
      }
    }
  }

  @Test
  void every_cell_is_text_so_that_no_number_loses_digits_and_nothing_is_a_formula()
      throws Exception {
    try (XSSFWorkbook workbook = read()) {
      workbook.forEach(
          sheet ->
              sheet.forEach(
                  row ->
                      row.forEach(
                          cell -> assertThat(cell.getCellType()).isEqualTo(CellType.STRING))));
      Cell chip = workbook.getSheetAt(0).getRow(1).getCell(Column.CHIPS.ordinal());
      assertThat(chip.getStringCellValue()).isEqualTo("999000000001001");
      assertThat(chip.getCellStyle().getDataFormatString()).isEqualTo("@");
    }
  }

  @Test
  void the_headings_stay_in_sight_and_can_be_filtered() throws Exception {
    try (XSSFWorkbook workbook = read()) {
      XSSFSheet sheet = workbook.getSheetAt(0);
      assertThat(sheet.getPaneInformation().isFreezePane()).isTrue();
      assertThat(sheet.getPaneInformation().getHorizontalSplitPosition()).isEqualTo((short) 1);
      assertThat(sheet.getCTWorksheet().getAutoFilter().getRef()).isEqualTo("A1:O9");
    }
  }

  @Test
  void a_second_sheet_says_what_to_keep_in_mind() throws Exception {
    try (XSSFWorkbook workbook = read()) {
      XSSFSheet notes = workbook.getSheet("Please read");
      assertThat(text(notes.getRow(0), 0)).isEqualTo("Follow-ups for Harbour Vets, 1 March 2026");
      assertThat(text(notes.getRow(2), 0))
          .isEqualTo(
              "Records that differ prove neither who owns an animal nor that anyone did wrong.");
    }
  }

  private XSSFWorkbook read() throws Exception {
    return new XSSFWorkbook(new ByteArrayInputStream(new ListWorkbook(texts).of(list)));
  }

  private static String text(Row row, int column) {
    return row.getCell(column, Row.MissingCellPolicy.CREATE_NULL_AS_BLANK).getStringCellValue();
  }
}
