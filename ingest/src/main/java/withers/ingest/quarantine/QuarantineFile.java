package withers.ingest.quarantine;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import withers.id.SourceId;
import withers.ingest.csv.CsvText;
import withers.workspace.OwnerOnly;

/**
 * The quarantine of one import: a CSV file for its owner only, since rows hold people's details.
 * The name follows from the export, so that a repeated import replaces the file instead of adding
 * one.
 */
public final class QuarantineFile {

  private static final List<String> HEADER =
      List.of("source", "file", "line", "column", "code", "reason", "row");

  /** What makes a spreadsheet take a cell for a formula (OWASP, CSV injection). */
  private static final String FORMULA_SIGNS = "=+-@\t\r\n";

  private QuarantineFile() {}

  /**
   * Writes the rows, whole or not at all.
   *
   * @param digest of the files of the export, in hexadecimal
   */
  public static Path write(
      Path folder,
      SourceId source,
      LocalDate exportDate,
      String digest,
      List<QuarantinedRow> rows) {
    Path file =
        folder.resolve("%s-%s-%s.csv".formatted(source, exportDate, digest.substring(0, 8)));
    StringBuilder text = new StringBuilder(CsvText.line(HEADER));
    rows.forEach(row -> text.append(line(source, row)));
    try {
      OwnerOnly.folder(folder);
      OwnerOnly.replace(file, text.toString().getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return file;
  }

  private static String line(SourceId source, QuarantinedRow row) {
    return CsvText.line(
        List.of(
            source.value(),
            row.file(),
            Long.toString(row.line()),
            row.reject().column(),
            row.reject().code().name(),
            row.reject().message(),
            harmless(row.text())));
  }

  private static String harmless(String text) {
    return !text.isEmpty() && FORMULA_SIGNS.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
  }
}
