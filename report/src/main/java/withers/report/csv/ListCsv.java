package withers.report.csv;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.QuoteMode;
import withers.report.list.FollowUpList;
import withers.report.table.ListTable;
import withers.report.text.Texts;

/**
 * A list as CSV (RFC 4180, every field quoted), in UTF-8 with a byte order mark, by which
 * spreadsheets recognise it. For programs: opened in a spreadsheet, chip numbers lose digits; the
 * workbook is made for that.
 */
public final class ListCsv {
  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180.builder().setQuoteMode(QuoteMode.ALL).get();
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private final Texts texts;

  public ListCsv(Texts texts) {
    this.texts = texts;
  }

  /** The file's bytes. */
  public byte[] of(FollowUpList list) {
    StringBuilder text = new StringBuilder(BYTE_ORDER_MARK);
    try (CSVPrinter printer = new CSVPrinter(text, FORMAT)) {
      printer.printRecord(ListTable.headings(texts));
      printer.printRecords(ListTable.rows(list, texts));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }
}
