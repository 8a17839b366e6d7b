package withers.ingest.xlsx;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static withers.ingest.xlsx.Workbooks.formatted;
import static withers.ingest.xlsx.Workbooks.formula;
import static withers.ingest.xlsx.Workbooks.row;
import static withers.ingest.xlsx.Workbooks.rowAt;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.FileFormat;
import withers.ingest.profile.TextFormat;
import withers.ingest.rows.Row;
import withers.ingest.rows.Typed;
import withers.source.InputRefusedException;

/** Workbooks are written by Apache POI, or by hand where it would not write such a thing. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class XlsxFileTest {

  private static final String SHEET = "xl/worksheets/sheet1.xml";
  private static final FileFormat FORMAT =
      new FileFormat(TextFormat.FOUND_OUT, DatePattern.of("dd/MM/yyyy"));

  @TempDir Path folder;

  @Test
  void reads_texts_numbers_truths_and_days() {
    List<Row> rows =
        read(
            Workbooks.ofSheet(
                sheet -> {
                  row(sheet, "Chip", "Seen", "Dead", "Client");
                  row(
                      sheet,
                      999010000000011.0,
                      formatted(44197.75, "yyyy-mm-dd hh:mm"),
                      true,
                      " Ada Example ");
                }));

    assertThat(texts(rows)).containsExactly("999010000000011|01/01/2021|TRUE|Ada Example");
    assertThat(rows.get(0).typed(1)).isEqualTo(Typed.day(LocalDate.of(2021, 1, 1)));
    assertThat(rows.get(0).line()).isEqualTo(2);
  }

  @Test
  void reads_formulas_by_the_value_that_was_saved() {
    List<Row> rows =
        read(
            Workbooks.ofSheet(
                sheet -> {
                  row(sheet, "A", "B", "C", "D");
                  row(
                      sheet,
                      formula("\"0\"&\"36012345678901\""),
                      formula("999010000000000+11"),
                      formula("1=1"),
                      formula("1/0"));
                }));

    assertThat(texts(rows)).containsExactly("036012345678901|999010000000011|TRUE|#DIV/0!");
    assertThat(rows.get(0).typed(3)).isEqualTo(Typed.unreadable("the error #DIV/0!"));
  }

  @Test
  void a_formula_without_a_saved_value_cannot_be_read() {
    byte[] workbook =
        Workbooks.edited(
            Workbooks.ofSheet(
                sheet -> {
                  row(sheet, "A");
                  row(sheet, formula("1+1"));
                }),
            SHEET,
            "<v>2.0</v>",
            "");

    assertThat(read(workbook).get(0).typed(0))
        .isEqualTo(Typed.unreadable("a formula whose value was not saved"));
  }

  @Test
  void an_error_is_unreadable() {
    List<Row> rows =
        read(
            Workbooks.ofSheet(
                sheet -> {
                  row(sheet, "A", "B");
                  row(sheet, cell(FormulaError.REF), "x");
                }));

    assertThat(rows.get(0).typed(0)).isEqualTo(Typed.unreadable("the error #REF!"));
    assertThat(rows.get(0).typed(1)).isEqualTo(Typed.TEXT);
  }

  private static java.util.function.Consumer<Cell> cell(FormulaError error) {
    return cell -> cell.setCellErrorValue(error.getCode());
  }

  @ParameterizedTest
  @ValueSource(strings = {"true", "1"})
  void counts_days_from_1904_where_the_workbook_says_so(String truth) {
    byte[] workbook =
        Workbooks.edited(
            Workbooks.of(
                book -> {
                  book.getCTWorkbook().getWorkbookPr().setDate1904(true);
                  XSSFSheet sheet = book.createSheet();
                  row(sheet, "Seen");
                  row(sheet, formatted(2225, "dd/mm/yyyy"));
                }),
            "xl/workbook.xml",
            "date1904=\"true\"",
            "date1904=\"" + truth + "\"");

    assertThat(read(workbook).get(0).typed(0).day()).contains(LocalDate.of(1910, 2, 3));
  }

  @Test
  void passes_over_blank_rows_and_counts_them_and_reads_hidden_ones() {
    List<Row> rows =
        read(
            Workbooks.ofSheet(
                sheet -> {
                  rowAt(sheet, 2, "A", "B");
                  rowAt(sheet, 3, "  ", "");
                  rowAt(sheet, 7, "x", "").setZeroHeight(true);
                }));

    assertThat(texts(rows)).containsExactly("x|");
    assertThat(rows.get(0).line()).isEqualTo(8);
  }

  @Test
  void cells_right_of_the_header_are_passed_over_and_missing_ones_are_empty() {
    List<Row> rows =
        read(
            Workbooks.ofSheet(
                sheet -> {
                  row(sheet, "A", "B", "C", " ");
                  row(sheet, "1", "2", "3", "", "a note");
                  row(sheet, "4");
                }));

    assertThat(texts(rows)).containsExactly("1|2|3", "4||");
  }

  @Test
  void a_cell_merged_with_one_above_it_cannot_be_read() {
    List<Row> rows =
        read(
            Workbooks.ofSheet(
                sheet -> {
                  row(sheet, "A", "Client");
                  row(sheet, "1", "Ada Example");
                  row(sheet, "2");
                  sheet.addMergedRegion(new CellRangeAddress(1, 2, 1, 1));
                }));

    assertThat(rows.get(0).isTyped()).isFalse();
    assertThat(rows.get(1).typed(1))
        .isEqualTo(Typed.unreadable("a cell that is merged with one above it"));
  }

  @Test
  void reads_characters_that_XML_cannot_hold_and_shared_rich_and_inline_texts() {
    byte[] workbook =
        Workbooks.edited(
            Workbooks.ofSheet(
                sheet -> {
                  row(sheet, "A", "B");
                  row(sheet, "one_x000A_two", "inline");
                }),
            SHEET,
            "<c r=\"B2\" t=\"s\" s=\"0\"><v>3</v></c>",
            "<c r=\"B2\" t=\"inlineStr\"><is><r><t>in</t></r><r><t>line</t></r></is></c>");

    assertThat(texts(read(workbook))).containsExactly("one\ntwo|inline");
  }

  @Test
  void reads_the_only_sheet_that_is_shown_and_has_rows() {
    assertThat(texts(read(threeSheets()))).containsExactly("x");
  }

  private static byte[] threeSheets() {
    return Workbooks.of(
        book -> {
          book.createSheet("Notes");
          row(book.createSheet("Lists"), "dog");
          XSSFSheet sheet = book.createSheet("Patients");
          row(sheet, "A");
          row(sheet, "x");
          book.setSheetHidden(1, true);
        });
  }

  @Test
  void reads_the_sheet_that_is_named_even_a_hidden_one() throws IOException {
    try (XlsxFile file = open(threeSheets(), Optional.of("Lists"))) {
      assertThat(file.header().names()).containsExactly("dog");
    }
  }

  @Test
  void refuses_to_choose_between_sheets() {
    byte[] workbook =
        Workbooks.of(
            book -> {
              for (String name : List.of("North", "South", "East", "West")) {
                row(book.createSheet(name), "A");
              }
            });

    assertThatThrownBy(() -> open(workbook, Optional.empty()))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(
            "Expected one sheet with rows, but found 4: \"North\", \"South\", \"East\" and others (export.xlsx): name"
                + " the one to read under format: sheet in the profile. Nothing was changed.");
    assertThatThrownBy(() -> open(workbook, Optional.of("Nord")))
        .hasMessage(
            "Expected a sheet \"Nord\", but found only \"North\", \"South\", \"East\" and others (export.xlsx): put the"
                + " sheet's name right in the profile. Nothing was changed.");
  }

  @Test
  void refuses_a_workbook_without_rows() {
    assertThatThrownBy(() -> open(Workbooks.ofSheet(sheet -> {}), Optional.empty()))
        .hasMessage(
            "Expected a sheet with a header and rows, but found none that is shown (export.xlsx): ask for the export"
                + " again. Nothing was changed.");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<c r=\"A2\" t=\"s\"><v>2000000000</v></c>",
        "<c r=\"A2\" t=\"s\"><v>-1</v></c>",
        "<c r=\"ZZZZ2\"><v>1</v></c>",
        "<c r=\"XFE2\"><v>1</v></c>",
        "<c r=\"A2\" t=\"d\"><v>2031-01-01</v></c>",
        "<c r=\"A2\" s=\"-1\"><v>1</v></c>",
        "<c r=\"A2\"><f t=\"shared\" si=\"7\"/><v>1</v></c>",
        "<c r=\"A2\"",
        "<c r=\"A2\"><v>&undeclared;</v></c>",
        "<a><b><c><d>",
      })
  void refuses_what_no_program_writes(String cell) {
    byte[] workbook =
        Workbooks.edited(
            Workbooks.ofSheet(
                sheet -> {
                  row(sheet, "A");
                  row(sheet, "x");
                }),
            SHEET,
            "<c r=\"A2\" t=\"s\" s=\"0\"><v>1</v></c>",
            cell);

    assertBroken(workbook);
  }

  @Test
  void refuses_document_types_and_with_them_texts_that_multiply() {
    assertBroken(
        Workbooks.edited(
            Workbooks.ofSheet(sheet -> row(sheet, "A")),
            SHEET,
            "<worksheet",
            "<!DOCTYPE worksheet [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;\">]><worksheet"));
  }

  @Test
  void refuses_a_text_longer_than_a_cell_can_hold_and_elements_without_end() {
    byte[] workbook = Workbooks.ofSheet(sheet -> row(sheet, "A"));

    assertBroken(
        Workbooks.edited(
            workbook, "xl/sharedStrings.xml", "<t>A</t>", "<t>" + "A".repeat(2_000_000) + "</t>"));
    assertBroken(
        Workbooks.edited(workbook, SHEET, "<sheetData>", "<sheetData>" + "<x>".repeat(1_000)));
  }

  private void assertBroken(byte[] workbook) {
    assertThatThrownBy(() -> read(workbook))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(
            "Expected a whole spreadsheet, but found one that is damaged, or written in a way of its own (export.xlsx):"
                + " open it, and save it as .xlsx or as CSV. Nothing was changed.");
  }

  private List<Row> read(byte[] workbook) {
    try (XlsxFile file = open(workbook, Optional.empty())) {
      List<Row> rows = new ArrayList<>();
      for (Optional<Row> row = file.next(); row.isPresent(); row = file.next()) {
        rows.add(row.get());
      }
      return rows;
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private XlsxFile open(byte[] workbook, Optional<String> sheet) throws IOException {
    Path path = Files.write(folder.resolve("export.xlsx"), workbook);
    return XlsxFile.open(
        ExportFile.inspect(path, FORMAT), FORMAT.onSheet(sheet), List.of(), bytes -> {});
  }

  private static List<String> texts(List<Row> rows) {
    List<String> texts = new ArrayList<>();
    for (Row row : rows) {
      List<String> cells = new ArrayList<>();
      for (int i = 0; i < row.size(); i++) {
        cells.add(row.cell(i));
      }
      texts.add(String.join("|", cells));
    }
    return texts;
  }
}
