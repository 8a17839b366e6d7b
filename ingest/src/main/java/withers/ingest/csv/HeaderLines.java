package withers.ingest.csv;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import withers.ingest.rows.Header;
import withers.ingest.sniff.Dialect;
import withers.ingest.sniff.HeaderSniffer;
import withers.ingest.sniff.SampleReader;
import withers.ingest.sniff.SampleRecord;

/** The first lines of a text, each of which may be its header. */
final class HeaderLines {

  private final String text;
  private final List<String> wanted;
  private final List<Integer> starts;

  /**
   * @param wanted the columns that a header must have
   */
  HeaderLines(String text, List<String> wanted) {
    this.text = text;
    this.wanted = List.copyOf(new LinkedHashSet<>(wanted));
    this.starts = SampleReader.lineStarts(text, HeaderSniffer.DEEPEST);
  }

  List<String> wanted() {
    return wanted;
  }

  /** The first line that has all columns. */
  Optional<CsvLayout> withAll(Dialect dialect) {
    return headers(dialect).stream()
        .filter(header -> header.count(wanted) == wanted.size())
        .findFirst()
        .map(header -> new CsvLayout(dialect, header.line(), 0));
  }

  /** The first of the lines that have most columns; the first filled one when none has any. */
  CsvLayout withMost(Dialect dialect) {
    return headers(dialect).stream()
        .max(
            Comparator.comparingLong((Header header) -> header.count(wanted))
                .thenComparing(Comparator.comparingLong(Header::line).reversed()))
        .map(header -> new CsvLayout(dialect, header.line(), 0))
        .orElse(new CsvLayout(dialect, 1, 0));
  }

  /** Cells of the header. */
  int width(CsvLayout layout) {
    return SampleReader.at(text, start(layout), layout.headerLine(), layout.dialect())
        .map(SampleRecord::width)
        .orElse(0);
  }

  /** The text from the header on. */
  String from(CsvLayout layout) {
    return text.substring(start(layout));
  }

  private int start(CsvLayout layout) {
    return starts.isEmpty() ? 0 : starts.get((int) layout.headerLine() - 1);
  }

  private List<Header> headers(Dialect dialect) {
    List<Header> headers = new ArrayList<>();
    for (int i = 0; i < starts.size(); i++) {
      SampleReader.at(text, starts.get(i), i + 1L, dialect)
          .filter(record -> record.isSound() && !record.isBlank())
          .ifPresent(record -> headers.add(new Header("", record.line(), record.cells())));
    }
    return headers;
  }
}
