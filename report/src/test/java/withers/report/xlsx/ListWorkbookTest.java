package withers.report.xlsx;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DataValidation.ErrorStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFDataValidation;
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
              .isEqualTo(ListTable.rows(list, texts).toList().get(row).get(column));
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
                          cell ->
                              assertThat(cell.getCellType())
                                  .isIn(CellType.STRING, CellType.BLANK))));
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
      assertThat(sheet.getPaneInformation().getVerticalSplitPosition()).isEqualTo((short) 1);
      assertThat(sheet.getCTWorksheet().getAutoFilter().getRef()).isEqualTo("A1:W9");
    }
  }

  @Test
  void only_the_answers_of_follow_ups_can_be_written_in() throws Exception {
    try (XSSFWorkbook workbook = read()) {
      XSSFSheet sheet = workbook.getSheetAt(0);
      assertThat(sheet.getProtect()).isTrue();
      assertThat(sheet.isAutoFilterLocked()).isFalse();
      assertThat(sheet.isFormatColumnsLocked()).isFalse();
      assertThat(sheet.validateSheetPassword("withers")).isTrue();
      for (Column column : Column.values()) {
        for (int row = 0; row <= 8; row++) {
          boolean isAnswer = column.isWritten() && row >= 1 && row <= list.size();
          assertThat(isLocked(sheet.getRow(row), column)).isEqualTo(!isAnswer);
        }
      }
    }
  }

  private static boolean isLocked(Row row, Column column) {
    Cell cell = row.getCell(column.ordinal());
    return cell == null || cell.getCellStyle().getLocked();
  }

  @Test
  void outcomes_and_ways_to_reach_a_client_are_chosen_from_a_list() throws Exception {
    try (XSSFWorkbook workbook = read()) {
      XSSFSheet sheet = workbook.getSheetAt(0);
      assertThat(choices(workbook, Column.OUTCOME))
          .containsExactly(
              "The registration has been put right",
              "Our record was mistaken and has been put right",
              "The animal has died",
              "The client no longer has the animal",
              "The client was reached and will do it",
              "Nothing is wrong, leave it as it is",
              "It is not ours to do",
              "The client could not be reached",
              "Tried, nothing came of it yet");
      assertThat(choices(workbook, Column.CHANNEL))
          .containsExactly("Phone", "E-mail", "Post", "Not at all");
      assertThat(sheet.getDataValidations())
          .extracting(one -> one.getErrorBoxTitle())
          .containsExactly("What came of it", "Client best reached by");
      assertThat(sheet.getDataValidations())
          .allSatisfy(one -> assertThat(one.getShowErrorBox()).isTrue())
          .allSatisfy(one -> assertThat(one.getErrorBoxText()).startsWith("Please choose one"))
          .allSatisfy(one -> assertThat(one.getErrorStyle()).isEqualTo(ErrorStyle.STOP));
    }
  }

  /** What the rule of a column's cells lets choose from, wherever that stands. */
  private List<String> choices(XSSFWorkbook workbook, Column column) {
    XSSFDataValidation rule =
        workbook.getSheetAt(0).getDataValidations().stream()
            .filter(one -> isFor(one.getRegions().getCellRangeAddress(0), column))
            .findFirst()
            .orElseThrow();
    AreaReference area =
        new AreaReference(
            rule.getValidationConstraint().getFormula1(), SpreadsheetVersion.EXCEL2007);
    return Stream.of(area.getAllReferencedCells())
        .map(
            one -> workbook.getSheet(one.getSheetName()).getRow(one.getRow()).getCell(one.getCol()))
        .map(Cell::getStringCellValue)
        .toList();
  }

  private boolean isFor(CellRangeAddress cells, Column column) {
    return cells.equals(new CellRangeAddress(1, list.size(), column.ordinal(), column.ordinal()));
  }

  @Test
  void a_day_that_is_typed_becomes_a_day_that_reads_alike_everywhere() throws Exception {
    try (XSSFWorkbook workbook = read()) {
      Row first = workbook.getSheetAt(0).getRow(1);
      assertThat(first.getCell(Column.ON.ordinal()).getCellStyle().getDataFormatString())
          .isEqualTo("yyyy-mm-dd");
      assertThat(first.getCell(Column.OUTCOME.ordinal()).getCellStyle().getDataFormatString())
          .isEqualTo("@");
    }
  }

  @Test
  void each_follow_up_names_the_list_that_it_stands_on() throws Exception {
    try (XSSFWorkbook workbook = read()) {
      assertThat(text(workbook.getSheetAt(0).getRow(1), Column.LIST.ordinal()))
          .isEqualTo(list.organisation().id() + " " + list.run());
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
