package withers.ingest.xlsx;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Date;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Spreadsheets for tests, written by Apache POI, the same bytes each time. */
public final class Workbooks {

  private Workbooks() {}

  /** A workbook. */
  public static byte[] of(Consumer<XSSFWorkbook> content) {
    try (XSSFWorkbook workbook = new XSSFWorkbook()) {
      content.accept(workbook);
      workbook
          .getProperties()
          .getCoreProperties()
          .setCreated(Optional.of(Date.from(Instant.EPOCH)));
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      workbook.write(bytes);
      return zip(unzip(bytes.toByteArray()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A workbook of one sheet. */
  public static byte[] ofSheet(Consumer<XSSFSheet> content) {
    return of(workbook -> content.accept(workbook.createSheet("Patients")));
  }

  /**
   * Adds a row below the others; gaps stay as they are.
   *
   * @param values texts, numbers, truth values, or a {@link Consumer} of the cell; an empty text
   *     makes no cell
   */
  public static XSSFRow row(XSSFSheet sheet, Object... values) {
    return rowAt(
        sheet, sheet.getPhysicalNumberOfRows() == 0 ? 0 : sheet.getLastRowNum() + 1, values);
  }

  /** Adds a row at a place, from 0. */
  public static XSSFRow rowAt(XSSFSheet sheet, int place, Object... values) {
    XSSFRow row = sheet.createRow(place);
    for (int i = 0; i < values.length; i++) {
      if (!"".equals(values[i])) {
        set(row.createCell(i), values[i]);
      }
    }
    return row;
  }

  @SuppressWarnings("unchecked")
  private static void set(Cell cell, Object value) {
    if (value instanceof String text) {
      cell.setCellValue(text);
    } else if (value instanceof Number number) {
      cell.setCellValue(number.doubleValue());
    } else if (value instanceof Boolean truth) {
      cell.setCellValue(truth);
    } else {
      ((Consumer<Cell>) value).accept(cell);
    }
  }

  /** A number in a format. */
  public static Consumer<Cell> formatted(double number, String format) {
    return cell -> {
      CellStyle style = cell.getSheet().getWorkbook().createCellStyle();
      style.setDataFormat(cell.getSheet().getWorkbook().createDataFormat().getFormat(format));
      cell.setCellValue(number);
      cell.setCellStyle(style);
    };
  }

  /** A formula with its value worked out. */
  public static Consumer<Cell> formula(String formula) {
    return cell -> {
      cell.setCellFormula(formula);
      cell.getSheet()
          .getWorkbook()
          .getCreationHelper()
          .createFormulaEvaluator()
          .evaluateFormulaCell(cell);
    };
  }

  /** The same workbook with a text of one part replaced. */
  public static byte[] edited(byte[] workbook, String part, String from, String to) {
    Map<String, byte[]> parts = unzip(workbook);
    String text = new String(parts.get(part), StandardCharsets.UTF_8);
    if (!text.contains(from)) {
      throw new IllegalArgumentException(
          "Expected %s in %s, but found %s".formatted(from, part, text));
    }
    parts.put(part, text.replace(from, to).getBytes(StandardCharsets.UTF_8));
    return zip(parts);
  }

  /** An archive's entries, in their order. */
  public static Map<String, byte[]> unzip(byte[] archive) {
    Map<String, byte[]> entries = new LinkedHashMap<>();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(archive))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        entries.put(entry.getName(), in.readAllBytes());
      }
      return entries;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** An archive without compression and times, which no version of a library writes otherwise. */
  public static byte[] zip(Map<String, byte[]> entries) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, byte[]> entry : entries.entrySet()) {
        out.putNextEntry(stored(entry.getKey(), entry.getValue()));
        out.write(entry.getValue());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private static ZipEntry stored(String name, byte[] content) {
    CRC32 crc = new CRC32();
    crc.update(content);
    ZipEntry entry = new ZipEntry(name);
    entry.setMethod(ZipEntry.STORED);
    entry.setSize(content.length);
    entry.setCrc(crc.getValue());
    entry.setTimeLocal(java.time.LocalDateTime.of(1980, 1, 1, 0, 0));
    return entry;
  }
}
