package withers.ingest.xlsx;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Sheet;
import withers.ingest.file.ExportFile;
import withers.ingest.pack.Packing;
import withers.ingest.rows.Header;
import withers.ingest.rows.Refusals;
import withers.ingest.rows.Row;
import withers.ingest.rows.Rows;
import withers.ingest.rows.Typed;
import withers.source.InputRefusedException;

/** An open sheet of a spreadsheet. */
public final class XlsxFile implements Rows {

  private static final ReadingOptions OPTIONS = new ReadingOptions(true, true);
  private static final Typed COVERED = Typed.unreadable("a cell that is merged with one above it");

  private final ExportFile file;
  private final LongConsumer progress;
  private final ReadableWorkbook workbook;
  private final Stream<org.dhatim.fastexcel.reader.Row> stream;
  private final Iterator<org.dhatim.fastexcel.reader.Row> rows;
  private final CellReader cells;
  private final MergedCells merged;
  private final Header header;

  private XlsxFile(
      ExportFile file, CheckedSheet sheet, ReadableWorkbook workbook, LongConsumer progress)
      throws IOException {
    this.file = file;
    this.progress = progress;
    this.workbook = workbook;
    this.cells = new CellReader(sheet.serials());
    this.merged = sheet.merged();
    this.stream = workbook.findSheet(sheet.name()).map(XlsxFile::stream).orElseGet(Stream::empty);
    this.rows = stream.iterator();
    this.header = readHeader();
  }

  private static Stream<org.dhatim.fastexcel.reader.Row> stream(Sheet sheet) {
    try {
      return sheet.openStream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Opens a sheet and reads its header.
   *
   * @param sheet its name; empty for the only one that is shown and has rows
   * @param progress is told of bytes read
   * @throws InputRefusedException when there is no such sheet, or the spreadsheet is damaged or out
   *     of bounds
   */
  public static XlsxFile open(ExportFile file, Optional<String> sheet, LongConsumer progress) {
    CheckedSheet checked = CheckedSheet.find(file, sheet);
    try {
      ReadableWorkbook workbook = workbook(file);
      try {
        return new XlsxFile(file, checked, workbook, progress);
      } catch (RuntimeException | IOException failed) {
        workbook.close();
        throw failed;
      }
    } catch (InputRefusedException refused) {
      throw refused;
    } catch (IOException | RuntimeException broken) {
      throw XlsxRefusals.broken(file.name(), broken);
    }
  }

  private static ReadableWorkbook workbook(ExportFile file) throws IOException {
    return file.place().packing() == Packing.PLAIN
        ? new ReadableWorkbook(file.place().path().toFile(), OPTIONS)
        : new ReadableWorkbook(file.open(), OPTIONS);
  }

  private Header readHeader() {
    XlsxRow first = read(Integer.MAX_VALUE).orElseThrow(() -> Refusals.empty(file.name()));
    List<String> names = new ArrayList<>(first.texts());
    while (!names.isEmpty() && names.get(names.size() - 1).isEmpty()) {
      names.remove(names.size() - 1);
    }
    return new Header(file.name(), names);
  }

  @Override
  public Header header() {
    return header;
  }

  @Override
  public Optional<Row> next() {
    Optional<Row> row = read(header.size()).map(found -> found);
    if (row.isEmpty()) {
      progress.accept(file.size());
    }
    return row;
  }

  /** The next row that says something, no wider than this. */
  private Optional<XlsxRow> read(int width) {
    try {
      while (rows.hasNext()) {
        XlsxRow row = row(rows.next(), width);
        if (!row.isBlank()) {
          return Optional.of(row);
        }
      }
      return Optional.empty();
    } catch (RuntimeException broken) {
      // The library throws what it happens to stumble over.
      throw XlsxRefusals.broken(file.name(), broken);
    }
  }

  private XlsxRow row(org.dhatim.fastexcel.reader.Row row, int width) {
    int wide = width == Integer.MAX_VALUE ? row.getCellCount() : width;
    List<CellReader.Content> contents = new ArrayList<>(wide);
    for (int i = 0; i < wide; i++) {
      contents.add(
          merged.covers(i, row.getRowNum())
              ? new CellReader.Content("", COVERED)
              : row.getOptionalCell(i).map(this::read).orElse(CellReader.Content.EMPTY));
    }
    return new XlsxRow(row.getRowNum(), contents);
  }

  private CellReader.Content read(Cell cell) {
    return cells.read(cell);
  }

  @Override
  public void close() {
    try (workbook) {
      stream.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
