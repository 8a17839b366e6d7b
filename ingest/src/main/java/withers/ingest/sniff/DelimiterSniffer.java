package withers.ingest.sniff;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/** Finds the delimiter: the one that makes records of one width, under a header of that width. */
public final class DelimiterSniffer {

  private static final int FOR_WIDTH = 60;
  private static final int FOR_HEADER = 40;

  private DelimiterSniffer() {}

  /**
   * What may stand between the cells of a text.
   *
   * @param whole whether the text is all there is
   */
  public static Finding<Delimiter> find(String text, boolean whole) {
    return new Finding<>(
        Arrays.stream(Delimiter.values()).flatMap(d -> guess(text, whole, d)).toList());
  }

  private static Stream<Guess<Delimiter>> guess(String text, boolean whole, Delimiter delimiter) {
    List<SampleRecord> records =
        SampleReader.read(text, new Dialect(delimiter, Quoting.DOUBLE), whole);
    Widths widths = Widths.of(records);
    if (widths.commonest() < 2) {
      return Stream.empty();
    }
    boolean header = hasHeader(records, widths.commonest());
    int confidence = widths.share() * FOR_WIDTH / 100 + (header ? FOR_HEADER : 0);
    return Stream.of(new Guess<>(delimiter, confidence, evidence(widths, header)));
  }

  private static boolean hasHeader(List<SampleRecord> records, int width) {
    return records.stream()
        .filter(record -> record.width() == width)
        .findFirst()
        .filter(first -> HeaderCells.are(first.cells()))
        .isPresent();
  }

  private static String evidence(Widths widths, boolean header) {
    return "%d %% of %,d records have %d cells, %s"
        .formatted(
            widths.share(),
            widths.all(),
            widths.commonest(),
            header
                ? "and the first of them looks like a header"
                : "but the first of them does not look like a header");
  }
}
