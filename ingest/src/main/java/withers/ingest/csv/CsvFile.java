package withers.ingest.csv;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.util.Iterator;
import java.util.Optional;
import java.util.function.LongConsumer;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import withers.ingest.file.ExportFile;
import withers.ingest.rows.Header;
import withers.ingest.rows.Refusals;
import withers.ingest.rows.Row;
import withers.ingest.rows.Rows;
import withers.source.InputRefusedException;

/** An open CSV file. */
public final class CsvFile implements Rows {

  private static final int BUFFER = 1 << 16;
  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private final ExportFile file;
  private final CSVFormat format;
  private final CSVParser parser;
  private final Iterator<CSVRecord> records;
  private final Header header;
  private Optional<CsvRow> last = Optional.empty();

  private CsvFile(ExportFile file, CSVFormat format, CSVParser parser) {
    this.file = file;
    this.format = format;
    this.parser = parser;
    this.records = parser.iterator();
    this.header = readHeader();
  }

  /**
   * Opens a file and reads its header.
   *
   * @param progress is told of bytes read
   * @throws InputRefusedException when it has no header
   */
  public static CsvFile open(ExportFile file, char delimiter, LongConsumer progress) {
    CSVFormat format = CSVFormat.RFC4180.builder().setDelimiter(delimiter).get();
    try {
      return new CsvFile(file, format, CSVParser.parse(reader(file, progress), format));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Reader reader(ExportFile file, LongConsumer progress) throws IOException {
    InputStreamReader decoding =
        new InputStreamReader(
            new CountingStream(file.open(), progress),
            file.charset()
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT));
    BufferedReader reader = new BufferedReader(decoding, BUFFER);
    reader.mark(1);
    if (reader.read() != BYTE_ORDER_MARK) {
      reader.reset();
    }
    return reader;
  }

  private Header readHeader() {
    CsvRow first = read().orElseThrow(() -> Refusals.empty(file.name()));
    return new Header(file.name(), first.cells());
  }

  @Override
  public Header header() {
    return header;
  }

  @Override
  public Optional<Row> next() {
    Optional<CsvRow> row = read();
    if (row.isEmpty()) {
      last.ifPresent(this::requireWhole);
    }
    last = row;
    return row.map(r -> r);
  }

  private Optional<CsvRow> read() {
    long line = nextLine();
    while (hasNext(line)) {
      CsvRow row = new CsvRow(records.next(), line, format);
      if (!row.isBlank()) {
        return Optional.of(row);
      }
      line = nextLine();
    }
    return Optional.empty();
  }

  private long nextLine() {
    return parser.getCurrentLineNumber() + 1;
  }

  private boolean hasNext(long line) {
    try {
      return records.hasNext();
    } catch (UncheckedIOException e) {
      throw broken(e, line);
    }
  }

  private RuntimeException broken(UncheckedIOException thrown, long line) {
    IOException cause = thrown.getCause();
    if (cause instanceof CharacterCodingException) {
      return Refusals.charset(file.name(), file.charset().name(), line);
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
  public void close() {
    try {
      parser.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
