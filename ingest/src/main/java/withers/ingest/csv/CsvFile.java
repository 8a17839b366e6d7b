package withers.ingest.csv;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.FileFormat;
import withers.ingest.rows.Header;
import withers.ingest.rows.NoRecords;
import withers.ingest.rows.Refusals;
import withers.ingest.rows.Row;
import withers.ingest.rows.Rows;
import withers.ingest.sniff.Dialect;
import withers.source.InputRefusedException;

/** An open CSV file. */
public final class CsvFile implements Rows {

  private static final int BUFFER = 1 << 16;
  private static final char BYTE_ORDER_MARK = '\uFEFF';

  /** Characters of a cell and of a row beyond which a file is refused. */
  static final int LONGEST_CELL = 100_000;

  static final int LONGEST_ROW = 1_000_000;
  private static final int MOST_IN_MEMORY = 4 * LONGEST_ROW; // with quotes and delimiters

  private final ExportFile file;
  private final CsvLayout layout;
  private final long titles;
  private final CSVFormat format;
  private final BoundedReader reader;
  private final CSVParser parser;
  private final Iterator<CSVRecord> records;
  private final Header header;
  private final NoRecords noRecords;
  private RowWidth width = RowWidth.UNKNOWN;
  private Optional<CsvRow> last = Optional.empty();

  private CsvFile(ExportFile file, CsvLayout layout, List<String> totals, BoundedReader reader)
      throws IOException {
    this.file = file;
    this.layout = layout;
    this.titles = reader.skipLines(layout.headerLine() - 1);
    this.format = format(layout.dialect());
    this.reader = reader;
    this.parser = CSVParser.parse(reader, format);
    this.records = parser.iterator();
    this.header = readHeader();
    this.width = RowWidth.under(header.names(), layout.spare());
    this.noRecords = new NoRecords(header, totals);
  }

  /**
   * Opens a file, finds out how it is laid out, and reads its header.
   *
   * @param wanted the columns that the profile names
   * @param progress is told of bytes read
   * @throws InputRefusedException when its layout is in doubt, or it has no header
   */
  public static CsvFile open(
      ExportFile file, FileFormat format, List<String> wanted, LongConsumer progress) {
    return open(file, LayoutFinder.find(file, format.text(), wanted), format.totals(), progress);
  }

  /**
   * Opens a file that is laid out so, and reads its header.
   *
   * @param totals words that name rows of sums
   * @param progress is told of bytes read
   * @throws InputRefusedException when it has no header
   */
  public static CsvFile open(
      ExportFile file, CsvLayout layout, List<String> totals, LongConsumer progress) {
    try {
      return open(file, new CountingStream(file.open(), progress), layout, totals);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Opens a file that is laid out so and of which some records are left out, and reads its header.
   *
   * @param bytes what is left of the file; closed with this one
   * @param totals words that name rows of sums
   * @throws InputRefusedException when it has no header
   */
  public static CsvFile open(
      ExportFile file, InputStream bytes, CsvLayout layout, List<String> totals) {
    try {
      return new CsvFile(file, layout, totals, reader(file, bytes));
    } catch (CharacterCodingException undecodable) {
      throw undecodable(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static InputRefusedException undecodable(ExportFile file) {
    try {
      return Refusals.charset(file.name(), file.charset().name(), Undecodable.line(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static CSVFormat format(Dialect dialect) {
    return CSVFormat.RFC4180
        .builder()
        .setDelimiter(dialect.delimiter().sign())
        .setQuote(dialect.quoting().sign().orElse(null))
        .get();
  }

  private static BoundedReader reader(ExportFile file, InputStream bytes) throws IOException {
    InputStreamReader decoding =
        new InputStreamReader(
            bytes,
            file.charset()
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT));
    BufferedReader reader = new BufferedReader(decoding, BUFFER);
    reader.mark(1);
    if (reader.read() != BYTE_ORDER_MARK) {
      reader.reset();
    }
    return new BoundedReader(
        reader,
        MOST_IN_MEMORY,
        file.charset().name().startsWith("UTF-16") || file.charset().name().startsWith("UTF-32"));
  }

  private Header readHeader() {
    CsvRow first = read().orElseThrow(() -> Refusals.empty(file.name()));
    return new Header(file.name(), first.line(), first.cells());
  }

  @Override
  public Header header() {
    return header;
  }

  @Override
  public Optional<Row> next() {
    Optional<CsvRow> row = read();
    while (row.isPresent() && noRecords.include(row.get())) {
      last = Optional.empty();
      row = read();
    }
    if (row.isEmpty()) {
      last.ifPresent(this::requireWhole);
    }
    last = row;
    return row.map(r -> r);
  }

  private Optional<CsvRow> read() {
    long line = nextLine();
    while (hasNext(line)) {
      CsvRow row = row(records.next(), line);
      if (!row.isBlankLine()) {
        return Optional.of(row);
      }
      line = nextLine();
    }
    return Optional.empty();
  }

  private CsvRow row(CSVRecord record, long line) {
    long length = 0;
    for (int i = 0; i < record.size(); i++) {
      int cell = record.get(i).length();
      if (cell > LONGEST_CELL) {
        throw Refusals.tooLong(file.name(), line, "a cell", LONGEST_CELL);
      }
      length += cell;
    }
    if (length > LONGEST_ROW) {
      throw Refusals.tooLong(file.name(), line, "a row", LONGEST_ROW);
    }
    return new CsvRow(record, line, format, width);
  }

  private long nextLine() {
    return layout.headerLine() + parser.getCurrentLineNumber();
  }

  private boolean hasNext(long line) {
    reader.nextRow();
    try {
      return records.hasNext();
    } catch (UncheckedIOException e) {
      throw broken(e, line);
    }
  }

  private RuntimeException broken(UncheckedIOException thrown, long line) {
    IOException cause = thrown.getCause();
    if (cause instanceof BoundedReader.TooLongException) {
      return Refusals.tooLong(file.name(), line, "a row", LONGEST_ROW);
    }
    if (cause instanceof BoundedReader.NulException) {
      return Refusals.nul(file.name(), line);
    }
    if (cause instanceof CharacterCodingException) {
      return undecodable(file);
    }
    if (cause instanceof CSVException && String.valueOf(cause.getMessage()).contains("EOF")) {
      return Refusals.openQuote(file.name(), line);
    }
    return cause instanceof CSVException ? Refusals.textAfterQuote(file.name(), line) : thrown;
  }

  /** A short last row without an end of line was cut off. */
  private void requireWhole(CsvRow last) {
    if (last.size() < header.size() && !file.endsWithNewline()) {
      throw Refusals.cutOff(file.name(), last.line(), header.size(), last.size());
    }
  }

  @Override
  public List<String> remarks() {
    return noRecords.told(titles).stream().toList();
  }

  @Override
  public void close() {
    try {
      parser.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
