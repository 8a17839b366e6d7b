package withers.ingest.quarantine;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.csv.QuoteMode;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import withers.id.SourceId;
import withers.ingest.csv.CsvFile;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.FileFormat;
import withers.ingest.profile.TextFormat;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.sniff.Quoting;
import withers.ingest.translate.Reject;

/** Rows go into quarantine and come out as they were, whatever is in them and however wide. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class QuarantineRoundTripTest {

  private static final SourceId CLINIC = new SourceId("harbour-clinic");
  private static final LocalDate DATE = LocalDate.of(2031, 1, 31);
  private static final String SIGNS = "=+-@\t\r\n'\"＝＋－＠,;|() \u00a0\u200b0123456789aZéß猫🐾\0";
  private static final List<String> WHOLE =
      List.of("", "(missing)", "(empty)", "'", "''", "999010000000017", "=1+1", "Pip");

  @TempDir Path folder;

  /** A row as an export holds it. */
  private record Plain(long line, List<String> cells) implements Row {

    @Override
    public int size() {
      return cells.size();
    }

    @Override
    public String cell(int place) {
      return cells.get(place).strip();
    }

    @Override
    public String text() {
      return String.join(";", cells);
    }

    List<String> read() {
      return cells.stream().map(String::strip).toList();
    }
  }

  static LongStream seeds() {
    return LongStream.range(0, 300);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void rows_come_back_as_they_were(long seed) throws IOException {
    Random random = new Random(seed);
    Header header = new Header("x.csv", cells(1 + random.nextInt(5), random));
    List<Plain> rows = rows(header.size(), random);

    Path file = write(header, rows);
    Path saved = random.nextBoolean() ? file : savedBySpreadsheet(file, random);

    List<Row> back = read(saved);
    assertThat(back.stream().map(QuarantineRoundTripTest::cells).toList())
        .as("seed %d", seed)
        .isEqualTo(rows.stream().map(Plain::read).toList());
    assertThat(back.stream().map(Row::text).toList())
        .as("seed %d", seed)
        .isEqualTo(rows.stream().map(row -> row.text().strip()).toList());
    assertThat(again(saved)).as("seed %d, written again", seed).isEqualTo(Files.readString(file));
  }

  private static List<Plain> rows(int width, Random random) {
    List<Plain> rows = new ArrayList<>();
    for (int line = 2; line < 3 + random.nextInt(4); line++) {
      int cells = random.nextInt(3) == 0 ? random.nextInt(width + 4) : width;
      rows.add(new Plain(line, cells(cells, random)));
    }
    return rows;
  }

  private static List<String> cells(int count, Random random) {
    return IntStream.range(0, count).mapToObj(i -> cell(random)).toList();
  }

  private static String cell(Random random) {
    if (random.nextInt(3) == 0) {
      return WHOLE.get(random.nextInt(WHOLE.size()));
    }
    int[] signs = SIGNS.codePoints().toArray();
    StringBuilder cell = new StringBuilder();
    for (int i = random.nextInt(6); i > 0; i--) {
      cell.appendCodePoint(signs[random.nextInt(signs.length - 1)]);
    }
    return cell.toString();
  }

  private Path write(Header header, List<Plain> rows) {
    return QuarantineFile.write(
        folder, CLINIC, DATE, rows.stream().map(row -> quarantined(header, row)).toList());
  }

  private static QuarantinedRow quarantined(Header header, Row row) {
    Reject reject = new Reject(Reject.Code.DAY_REFUSED, "Seen", "Expected a day, but found none");
    return QuarantinedRow.of(header.file(), header, row, reject);
  }

  /** Another delimiter, other quoting, no byte order mark, cells at the ends of rows left out. */
  private Path savedBySpreadsheet(Path file, Random random) throws IOException {
    char delimiter = ",;\t|".charAt(random.nextInt(4));
    CSVFormat to =
        CSVFormat.RFC4180.builder().setDelimiter(delimiter).setQuoteMode(QuoteMode.ALL).get();
    String text = Files.readString(file).substring(1);
    StringWriter saved = new StringWriter();
    try (CSVParser parser = CSVParser.parse(text, CSVFormat.RFC4180);
        CSVPrinter printer = new CSVPrinter(saved, to)) {
      for (CSVRecord row : parser) {
        printer.printRecord(random.nextBoolean() ? withoutEnd(row.toList()) : row.toList());
      }
    }
    return Files.writeString(folder.resolve("saved.csv"), saved.toString());
  }

  private static List<String> withoutEnd(List<String> cells) {
    int end = cells.size();
    while (end > 1 && cells.get(end - 1).isEmpty()) {
      end--;
    }
    return cells.subList(0, end);
  }

  private List<Row> read(Path file) {
    List<Row> read = new ArrayList<>();
    try (CorrectedRows rows = open(file)) {
      for (Optional<Row> next = rows.next(); next.isPresent(); next = rows.next()) {
        read.add(next.get());
      }
    }
    return read;
  }

  private static CorrectedRows open(Path file) {
    TextFormat text =
        new TextFormat(
            QuarantineSign.delimiter(file),
            Optional.of(Quoting.DOUBLE),
            Optional.of(StandardCharsets.UTF_8));
    FileFormat format = new FileFormat(text, DatePattern.of("yyyy-MM-dd"));
    ExportFile opened = ExportFile.inspect(file, format);
    return CorrectedRows.of(CsvFile.open(opened, format, List.of(), bytes -> {}));
  }

  private String again(Path file) throws IOException {
    List<QuarantinedRow> rows = new ArrayList<>();
    try (CorrectedRows open = open(file)) {
      for (Optional<Row> next = open.next(); next.isPresent(); next = open.next()) {
        rows.add(quarantined(open.header(), next.get()));
      }
    }
    return Files.readString(QuarantineFile.write(folder.resolve("again"), CLINIC, DATE, rows));
  }

  private static List<String> cells(Row row) {
    return IntStream.range(0, row.size()).mapToObj(row::cell).toList();
  }
}
