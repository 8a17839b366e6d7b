package withers.ingest.fuzz;

import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import withers.ingest.csv.CsvFile;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.FileFormat;
import withers.ingest.profile.TextFormat;
import withers.ingest.rows.Rows;
import withers.ingest.sniff.Delimiter;
import withers.ingest.sniff.Quoting;
import withers.ingest.sniff.Sniffer;

/** A text file: looked through, sniffed, and read to its end, with its format said and unsaid. */
public final class TextTarget {

  private static final DatePattern DATE = DatePattern.of("yyyy-MM-dd");
  private static final FileFormat UNSAID =
      new FileFormat(TextFormat.FOUND_OUT, Optional.empty(), List.of("Total"), DATE);
  private static final FileFormat SAID =
      new FileFormat(
          new TextFormat(
              Optional.of(Delimiter.SEMICOLON),
              Optional.of(Quoting.SINGLE),
              Optional.of(Charset.forName("windows-1252"))),
          DATE);

  private TextTarget() {}

  /** Called by the fuzzer, and with each file that is kept. */
  public static void fuzzerTestOneInput(byte[] input) {
    Sniffer.sniff(input, true);
    try (Scratch scratch = new Scratch()) {
      Path file = scratch.file("input.csv", input);
      Law.readTwice(input, () -> read(file, UNSAID, List.of("No", "Chip", "Client")));
      Law.readTwice(input, () -> read(file, SAID, List.of("No", "Chip")));
      Law.readTwice(input, () -> read(file, UNSAID, List.of()));
    }
  }

  private static String read(Path path, FileFormat format, List<String> wanted) {
    ExportFile file = ExportFile.inspect(path, format);
    if (file.content() == ExportFile.Content.WORKBOOK) {
      return "a spreadsheet";
    }
    try (Rows rows = CsvFile.open(file, format, wanted, bytes -> {})) {
      return file.remarks() + ReadRows.told(rows);
    }
  }
}
