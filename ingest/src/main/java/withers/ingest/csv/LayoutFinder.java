package withers.ingest.csv;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.TextFormat;
import withers.ingest.rows.Refusals;
import withers.ingest.sniff.Delimiter;
import withers.ingest.sniff.DelimiterSniffer;
import withers.ingest.sniff.Dialect;
import withers.ingest.sniff.Finding;
import withers.ingest.sniff.Guess;
import withers.ingest.sniff.Quoting;
import withers.ingest.sniff.QuotingSniffer;
import withers.ingest.sniff.SampleReader;
import withers.ingest.sniff.SampleRecord;
import withers.ingest.sniff.Sniffer;
import withers.ingest.sniff.Widths;
import withers.source.InputRefusedException;
import withers.yaml.Choices;

/**
 * Finds how a file is laid out. The columns that the profile names decide: the delimiter is the one
 * that yields a header with all of them. What the profile sets is not asked.
 */
public final class LayoutFinder {

  private static final long NEARLY_ALL = 90; // percent

  private final ExportFile file;
  private final TextFormat format;
  private final String text;
  private final boolean whole;
  private final HeaderLines lines;

  private LayoutFinder(ExportFile file, TextFormat format, List<String> wanted) {
    byte[] sample = sample(file);
    this.file = file;
    this.format = format;
    this.text = Sniffer.text(sample, file.charset());
    this.whole = sample.length == file.size();
    this.lines = new HeaderLines(text, wanted);
  }

  private static byte[] sample(ExportFile file) {
    try (InputStream in = file.open()) {
      return in.readNBytes(Sniffer.SAMPLE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Finds it.
   *
   * @param wanted the columns that the profile names
   * @throws InputRefusedException when it is in doubt, naming the readings
   */
  public static CsvLayout find(ExportFile file, TextFormat format, List<String> wanted) {
    LayoutFinder finder = new LayoutFinder(file, format, wanted);
    CsvLayout layout = finder.find();
    return new CsvLayout(layout.dialect(), layout.headerLine(), finder.spare(layout));
  }

  /** Nearly all rows must have as many cells more than the header, and those be empty. */
  private int spare(CsvLayout layout) {
    int width = lines.width(layout);
    List<SampleRecord> rows =
        SampleReader.read(lines.from(layout), layout.dialect(), whole).stream()
            .skip(1)
            .filter(record -> !record.isBlank())
            .toList();
    int most = Widths.of(rows).commonest();
    long spared =
        rows.stream().filter(row -> row.width() == most && row.isBlankFrom(width)).count();
    return most > width && spared * 100 >= rows.size() * NEARLY_ALL ? most - width : 0;
  }

  private CsvLayout find() {
    if (lines.wanted().isEmpty()) {
      return likeliest();
    }
    List<CsvLayout> found = with(delimiters());
    if (found.isEmpty()) {
      requireNoOtherDelimiter();
      return likeliest();
    }
    CsvLayout first = found.get(0);
    if (found.size() > 1 && lines.width(first) > 1) {
      throw inDoubt(found);
    }
    requireClearQuoting(first.dialect());
    return first;
  }

  private List<Delimiter> delimiters() {
    return format.delimiter().map(List::of).orElse(List.of(Delimiter.values()));
  }

  private List<CsvLayout> with(List<Delimiter> delimiters) {
    return delimiters.stream().flatMap(delimiter -> with(delimiter).stream()).toList();
  }

  private Optional<CsvLayout> with(Delimiter delimiter) {
    List<Quoting> quotings =
        format.quoting().map(List::of).orElse(List.of(Quoting.DOUBLE, Quoting.SINGLE));
    return quotings.stream()
        .map(quoting -> new Dialect(delimiter, quoting))
        .flatMap(dialect -> lines.withAll(dialect).stream())
        .findFirst();
  }

  private InputRefusedException inDoubt(List<CsvLayout> found) {
    String readings =
        found.stream()
            .map(
                one ->
                    "%d columns on line %d by %s"
                        .formatted(lines.width(one), one.headerLine(), word(one)))
            .collect(Collectors.joining(" and "));
    return Refusals.delimiterInDoubt(
        file.name(),
        readings,
        found.stream().map(LayoutFinder::word).collect(Collectors.joining(" or ")));
  }

  private static String word(CsvLayout layout) {
    return Choices.name(layout.dialect().delimiter());
  }

  /** Cells in apostrophes under a header without any: a habit of writing, or part of the cells. */
  private void requireClearQuoting(Dialect dialect) {
    if (format.quoting().isEmpty() && dialect.quoting() == Quoting.DOUBLE) {
      Finding<Quoting> quoting = QuotingSniffer.find(text, dialect.delimiter(), whole);
      quoting
          .best()
          .filter(guess -> guess.value() == Quoting.SINGLE)
          .ifPresent(
              guess -> {
                throw Refusals.quotingInDoubt(file.name(), guess.evidence());
              });
    }
  }

  private void requireNoOtherDelimiter() {
    if (format.delimiter().isPresent()) {
      List<Delimiter> others = new ArrayList<>(Arrays.asList(Delimiter.values()));
      others.removeAll(delimiters());
      with(others).stream()
          .findFirst()
          .ifPresent(
              other -> {
                String expected = Choices.name(delimiters().get(0));
                throw Refusals.otherDelimiter(
                    file.name(), other.headerLine(), expected, word(other));
              });
    }
  }

  /** No line holds all columns: the reading that tells best which are missing. */
  private CsvLayout likeliest() {
    Delimiter delimiter =
        format
            .delimiter()
            .or(() -> DelimiterSniffer.find(text, whole).best().map(Guess::value))
            .orElse(Delimiter.COMMA);
    return lines.withMost(new Dialect(delimiter, format.quoting().orElse(Quoting.DOUBLE)));
  }
}
