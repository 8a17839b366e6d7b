package withers.report.csv;

import java.io.BufferedWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
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
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      write(list, bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  /** Writes the file row by row; the stream stays open. */
  public void write(FollowUpList list, OutputStream out) throws IOException {
    Writer text = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    text.write(BYTE_ORDER_MARK);
    CSVPrinter printer = new CSVPrinter(text, FORMAT);
    printer.printRecord(ListTable.headings(texts));
    printer.printRecords(ListTable.rows(list, texts));
    printer.flush();
  }
}
