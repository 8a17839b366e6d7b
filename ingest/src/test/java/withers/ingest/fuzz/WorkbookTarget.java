package withers.ingest.fuzz;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.FileFormat;
import withers.ingest.profile.TextFormat;
import withers.ingest.rows.Rows;
import withers.ingest.xlsx.Workbooks;
import withers.ingest.xlsx.XlsxFile;

/**
 * A spreadsheet. An input that starts like a zip archive is read as it is. Any other is the parts
 * of a spreadsheet, each below a line {@code === path}, put into a sound one and packed: else
 * nearly every change would end at a checksum.
 */
public final class WorkbookTarget {

  private static final FileFormat ONLY_SHEET = format(Optional.empty());
  private static final FileFormat SHEET_NAMED = format(Optional.of("Patients"));
  private static final Pattern PART = Pattern.compile("(?m)^=== ([\\w/.\\[\\]-]{1,60})\n");
  private static final Pattern SHEETS = Pattern.compile("\"[^\"]{0,31}(\\.\\.\\.)?\"");
  private static final byte[] SOUND =
      Workbooks.ofSheet(
          sheet -> {
            Workbooks.row(sheet, "No", "Chip", "Seen");
            Workbooks.row(sheet, "P-1", "999010000000017", Workbooks.formatted(47_856, "d.m.yyyy"));
            Workbooks.row(sheet, "P-2", 999010000000018.0, true);
          });

  private WorkbookTarget() {}

  /** Called by the fuzzer, and with each file that is kept. */
  public static void fuzzerTestOneInput(byte[] input) {
    byte[] workbook = isZip(input) ? input : packed(new String(input, StandardCharsets.UTF_8));
    try (Scratch scratch = new Scratch()) {
      Path file = scratch.file("input.xlsx", workbook);
      Law.readTwice(input, SHEETS, () -> read(file, ONLY_SHEET, List.of("No", "Chip")));
      Law.readTwice(input, SHEETS, () -> read(file, SHEET_NAMED, List.of()));
    }
  }

  private static FileFormat format(Optional<String> sheet) {
    return new FileFormat(
        TextFormat.FOUND_OUT, sheet, List.of("Total"), DatePattern.of("yyyy-MM-dd"));
  }

  private static boolean isZip(byte[] input) {
    return input.length > 1 && input[0] == 'P' && input[1] == 'K';
  }

  private static byte[] packed(String text) {
    Map<String, byte[]> parts = Workbooks.unzip(SOUND);
    List<MatchResult> heads = PART.matcher(text).results().toList();
    for (int i = 0; i < heads.size(); i++) {
      int end = i + 1 < heads.size() ? heads.get(i + 1).start() : text.length();
      String part = text.substring(heads.get(i).end(), end);
      parts.put(heads.get(i).group(1), part.getBytes(StandardCharsets.UTF_8));
    }
    return Workbooks.zip(parts);
  }

  private static String read(Path path, FileFormat format, List<String> wanted) {
    ExportFile file = ExportFile.inspect(path, format);
    if (file.content() == ExportFile.Content.TEXT) {
      return "a text";
    }
    try (Rows rows = XlsxFile.open(file, format, wanted, bytes -> {})) {
      return ReadRows.told(rows);
    }
  }
}
