package withers.ingest.quarantine;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import withers.id.SourceId;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.rows.Rows;
import withers.source.InputRefusedException;

/**
 * The rows of a quarantine file, read as rows of the export that they come from, under its own
 * header. Every row must be of one source and export date.
 */
public final class CorrectedRows implements Rows {

  /**
   * What a quarantine file is about.
   *
   * @param exportDate of the export that the rows come from
   */
  public record About(SourceId source, LocalDate exportDate) {}

  private final Rows rows;
  private final Header header;
  private Optional<About> about = Optional.empty();

  private CorrectedRows(Rows rows) {
    this.rows = rows;
    this.header = new Header(rows.header().file(), exported(rows.header().names()));
  }

  /**
   * Reads through to the rows of a quarantine file.
   *
   * @param rows those of the file as it stands; closed with this
   */
  public static CorrectedRows of(Rows rows) {
    return new CorrectedRows(rows);
  }

  /**
   * What the file is about, by its first row.
   *
   * @throws InputRefusedException when it has no rows, or the first does not tell
   */
  public static About about(Rows rows) {
    CorrectedRows corrected = of(rows);
    return corrected
        .next()
        .flatMap(first -> corrected.about)
        .orElseThrow(
            () ->
                new InputRefusedException(
                    "Expected rows to be put right, but found none (%s): nothing is left to do; the file can go. Nothing was changed."
                        .formatted(corrected.header.file())));
  }

  private static List<String> exported(List<String> names) {
    int end = names.size();
    while (end > QuarantineColumns.OURS.size() && isBeyond(names, end - 1)) {
      end--;
    }
    return names.subList(QuarantineColumns.OURS.size(), end).stream()
        .map(QuarantineColumns::exported)
        .toList();
  }

  private static boolean isBeyond(List<String> names, int place) {
    return IntStream.rangeClosed(1, names.size())
        .anyMatch(i -> names.get(place).equals(QuarantineColumns.beyond(i)));
  }

  @Override
  public Header header() {
    return header;
  }

  @Override
  public Optional<Row> next() {
    Optional<CorrectedRow> next = read();
    while (next.isPresent() && next.get().isCleared()) {
      next = read();
    }
    next.ifPresent(this::requireOneExport);
    return next.map(row -> row);
  }

  private Optional<CorrectedRow> read() {
    return rows.next().map(row -> new CorrectedRow(row, header.size()));
  }

  private void requireOneExport(CorrectedRow row) {
    About of = new About(source(row), exportDate(row));
    if (about.isPresent() && !about.get().equals(of)) {
      throw refused(
          row,
          "rows of one source and export date, %s of %s"
              .formatted(about.get().source(), about.get().exportDate()),
          "another",
          QuarantineColumns.SOURCE);
    }
    about = Optional.of(of);
  }

  private SourceId source(CorrectedRow row) {
    try {
      return new SourceId(row.source());
    } catch (IllegalArgumentException wrong) {
      throw refused(row, "the id of a source", "other text", QuarantineColumns.SOURCE);
    }
  }

  private LocalDate exportDate(CorrectedRow row) {
    try {
      return LocalDate.parse(row.exportDate());
    } catch (DateTimeException wrong) {
      throw refused(row, "a day such as 2026-01-31", "other text", QuarantineColumns.EXPORT_DATE);
    }
  }

  private InputRefusedException refused(CorrectedRow row, String expected, String found, int at) {
    return new InputRefusedException(
        "Expected %s, but found %s (%s, line %d, column \"%s\"): leave the first columns of a quarantine file as they are. Nothing was changed."
            .formatted(expected, found, header.file(), row.line(), QuarantineColumns.OURS.get(at)));
  }

  @Override
  public void close() {
    rows.close();
  }
}
