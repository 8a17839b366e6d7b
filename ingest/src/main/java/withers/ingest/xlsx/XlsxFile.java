package withers.ingest.xlsx;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
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
import withers.ingest.profile.FileFormat;
import withers.ingest.rows.Header;
import withers.ingest.rows.NoRecords;
import withers.ingest.rows.Refusals;
import withers.ingest.rows.Row;
import withers.ingest.rows.Rows;
import withers.ingest.rows.Typed;
import withers.ingest.sniff.HeaderSniffer;
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
  private final Deque<org.dhatim.fastexcel.reader.Row> ahead = new ArrayDeque<>();
  private final Header header;
  private final NoRecords noRecords;
  private long before;

  private XlsxFile(
      ExportFile file,
      CheckedSheet sheet,
      ReadableWorkbook workbook,
      FileFormat format,
      List<String> wanted,
      LongConsumer progress) {
    this.file = file;
    this.progress = progress;
    this.workbook = workbook;
    this.cells = new CellReader(sheet.serials(), format.date());
    this.merged = sheet.merged();
    this.stream = workbook.findSheet(sheet.name()).map(XlsxFile::stream).orElseGet(Stream::empty);
    this.rows = stream.iterator();
    this.header = findHeader(wanted);
    this.noRecords = new NoRecords(header, format.totals());
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
   * @param wanted the columns that the profile names: the header is the first row that has them all
   * @param progress is told of bytes read
   * @throws InputRefusedException when there is no such sheet, or the spreadsheet is damaged or out
   *     of bounds
   */
  public static XlsxFile open(
      ExportFile file, FileFormat format, List<String> wanted, LongConsumer progress) {
    CheckedSheet checked = CheckedSheet.find(file, format.sheet());
    try {
      ReadableWorkbook workbook = workbook(file);
      try {
        return new XlsxFile(file, checked, workbook, format, wanted, progress);
      } catch (RuntimeException failed) {
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

  /** The first row with all columns that are wanted, else of the first rows the one with most. */
  private Header findHeader(List<String> wanted) {
    List<Header> headers = new ArrayList<>();
    for (Optional<XlsxRow> row = readAhead(); row.isPresent(); row = readAhead()) {
      headers.add(header(row.get()));
    }
    long most = headers.stream().mapToLong(one -> one.count(wanted)).max().orElse(0);
    Header found =
        headers.stream()
            .filter(one -> one.count(wanted) == most)
            .findFirst()
            .orElseThrow(() -> Refusals.empty(file.name()));
    before = headers.indexOf(found);
    ahead.removeIf(row -> row.getRowNum() <= found.line());
    return found;
  }

  /** The next of the first rows that says something, kept to be read again. */
  private Optional<XlsxRow> readAhead() {
    Optional<XlsxRow> filled = Optional.empty();
    while (filled.isEmpty() && ahead.size() < HeaderSniffer.DEEPEST && hasNext()) {
      org.dhatim.fastexcel.reader.Row row = rows.next();
      ahead.add(row);
      filled = Optional.of(row(row, row.getCellCount())).filter(one -> !one.isBlank());
    }
    return filled;
  }

  private Header header(XlsxRow row) {
    List<String> names = new ArrayList<>(row.texts());
    while (!names.isEmpty() && names.get(names.size() - 1).isEmpty()) {
      names.remove(names.size() - 1);
    }
    return new Header(file.name(), row.line(), names);
  }

  @Override
  public Header header() {
    return header;
  }

  @Override
  public Optional<Row> next() {
    while (!ahead.isEmpty() || hasNext()) {
      XlsxRow row = row(ahead.isEmpty() ? rows.next() : ahead.remove(), header.size());
      if (!noRecords.include(row)) {
        return Optional.of(row);
      }
    }
    progress.accept(file.size());
    return Optional.empty();
  }

  private boolean hasNext() {
    try {
      return rows.hasNext();
    } catch (RuntimeException broken) {
      // The library throws what it happens to stumble over.
      throw XlsxRefusals.broken(file.name(), broken);
    }
  }

  private XlsxRow row(org.dhatim.fastexcel.reader.Row row, int width) {
    List<CellReader.Content> contents = new ArrayList<>(width);
    for (int i = 0; i < width; i++) {
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
  public List<String> remarks() {
    return noRecords.told(before).stream().toList();
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
