package withers.report.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.apache.james.mime4j.dom.Entity;
import org.apache.james.mime4j.dom.Message;
import org.apache.james.mime4j.dom.Multipart;
import org.apache.james.mime4j.dom.SingleBody;
import org.apache.james.mime4j.message.DefaultMessageBuilder;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import withers.report.mail.smtp.FaultyServer;
import withers.report.table.Column;

/**
 * A list as its reader has it: a mail that the server took over, read with Mime4j, and the sheet
 * that was attached to it, read and filled in with Apache POI.
 */
record SentList(FaultyServer.Taken mail, String id, List<Told> rows) {

  /** A row of the sheet. */
  record Told(String reference, String mark, String record, String list) {}

  static SentList of(FaultyServer.Taken mail) {
    try {
      return new SentList(mail, read(mail).getMessageId(), rows(sheet(mail)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Message read(FaultyServer.Taken mail) throws IOException {
    byte[] bytes = mail.content().getBytes(StandardCharsets.ISO_8859_1);
    return new DefaultMessageBuilder().parseMessage(new ByteArrayInputStream(bytes));
  }

  /** What is attached to the text. */
  private static byte[] sheet(FaultyServer.Taken mail) throws IOException {
    Entity part = ((Multipart) read(mail).getBody()).getBodyParts().get(1);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ((SingleBody) part.getBody()).writeTo(bytes);
    return bytes.toByteArray();
  }

  private static List<Told> rows(byte[] sheet) throws IOException {
    List<Told> rows = new ArrayList<>();
    try (XSSFWorkbook workbook = new XSSFWorkbook(new ByteArrayInputStream(sheet))) {
      for (Row row : workbook.getSheetAt(0)) {
        rows.add(
            new Told(
                text(row, Column.REFERENCE),
                text(row, Column.MARK),
                text(row, Column.RECORD),
                text(row, Column.LIST)));
      }
    }
    return List.copyOf(rows.subList(1, rows.size()));
  }

  private static String text(Row row, Column column) {
    return new DataFormatter().formatCellValue(row.getCell(column.ordinal()));
  }

  /** The address that it went to. */
  String to() {
    return mail.to();
  }

  /** Whose list it is, and of which run, as its rows say. */
  Set<String> lists() {
    return rows.stream().map(Told::list).collect(Collectors.toSet());
  }

  /** The references of the rows that are marked so. */
  List<String> marked(String mark) {
    return rows.stream().filter(row -> row.mark.equals(mark)).map(Told::reference).toList();
  }

  /** The reference of the follow-up that is about this record of the reader's own. */
  String about(String record) {
    return rows.stream()
        .filter(row -> row.record.equals(record))
        .map(Told::reference)
        .findFirst()
        .orElseThrow();
  }

  /** An answer of a row: cells of the sheet, empty ones left as they are. */
  record Answer(String record, String outcome, String on, String again) {}

  /** The sheet as it comes back in XLSX. */
  byte[] filledIn(String notes, Answer... answers) throws IOException {
    try (XSSFWorkbook workbook = new XSSFWorkbook(new ByteArrayInputStream(sheet(mail)))) {
      Stream.of(answers).forEach(answer -> fill(row(workbook.getSheetAt(0), answer), answer));
      workbook.getSheetAt(0).getRow(1).getCell(Column.NOTE.ordinal()).setCellValue(notes);
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      workbook.write(bytes);
      return bytes.toByteArray();
    }
  }

  /** The sheet as it comes back when it was filled in and then saved as CSV. */
  byte[] filledInAsCsv(Answer... answers) throws IOException {
    StringBuilder text = new StringBuilder();
    byte[] filled = filledIn("", answers);
    try (XSSFWorkbook workbook = new XSSFWorkbook(new ByteArrayInputStream(filled));
        CSVPrinter csv = new CSVPrinter(text, CSVFormat.EXCEL)) {
      for (Row row : workbook.getSheetAt(0)) {
        csv.printRecord(Stream.of(Column.values()).map(column -> text(row, column)));
      }
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static Row row(XSSFSheet sheet, Answer answer) {
    for (Row row : sheet) {
      if (text(row, Column.RECORD).equals(answer.record)) {
        return row;
      }
    }
    throw new IllegalArgumentException("No row of the sheet is about " + answer.record);
  }

  private static void fill(Row row, Answer answer) {
    row.getCell(Column.OUTCOME.ordinal()).setCellValue(answer.outcome);
    row.getCell(Column.BY.ordinal()).setCellValue("front desk");
    day(answer.on).ifPresent(day -> row.getCell(Column.ON.ordinal()).setCellValue(day));
    day(answer.again).ifPresent(day -> row.getCell(Column.AGAIN.ordinal()).setCellValue(day));
  }

  private static Optional<LocalDate> day(String text) {
    return Optional.of(text).filter(one -> !one.isEmpty()).map(LocalDate::parse);
  }
}
