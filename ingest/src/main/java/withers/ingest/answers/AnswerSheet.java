package withers.ingest.answers;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import withers.answers.SheetWords;
import withers.ingest.csv.CsvFile;
import withers.ingest.file.ExportFile;
import withers.ingest.pack.PackedFile;
import withers.ingest.pack.Signature;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.FileFormat;
import withers.ingest.profile.TextFormat;
import withers.ingest.rows.Rows;
import withers.ingest.sniff.Delimiter;
import withers.ingest.sniff.Quoting;
import withers.ingest.xlsx.SheetFinder;
import withers.ingest.xlsx.XlsxFile;
import withers.source.InputRefusedException;

/**
 * A list's sheet that came back, known by its header, whatever spreadsheet has saved it and however
 * the file is called.
 *
 * @param header the cells of its header, as they stand there
 */
public record AnswerSheet(ExportFile file, FileFormat format, List<String> header) {

  /** Bytes at a text's beginning in which the header has to be. */
  private static final int START = 1 << 14;

  /** A title may stand above the header. */
  private static final int DEEPEST = 5;

  private static final int WIDEST = 100;
  private static final String BYTE_ORDER_MARK = "\uFEFF";
  private static final DatePattern DAYS = DatePattern.of("yyyy-MM-dd");

  public AnswerSheet {
    header = List.copyOf(header);
  }

  /**
   * The sheets in a file; none when it is no file, none that can be read, or holds anything else.
   *
   * @param words in the languages that they may be written in
   */
  public static List<AnswerSheet> in(Path path, List<SheetWords> words) {
    if (!Files.isRegularFile(path)) {
      return List.of();
    }
    try {
      List<AnswerSheet> sheets = new ArrayList<>();
      List<PackedFile> all = PackedFile.in(path);
      for (PackedFile place : all) {
        find(place, cells -> AnswerHeader.of(cells, words).isPresent()).ifPresent(sheets::add);
      }
      return sheets.size() == all.size() ? sheets : List.of();
    } catch (InputRefusedException unreadable) {
      return List.of(); // what is to be said of it is said when it is read as an export
    }
  }

  private static Optional<AnswerSheet> find(PackedFile place, Predicate<List<String>> isHeader) {
    try {
      byte[] start;
      try (InputStream in = place.open()) {
        start = in.readNBytes(START);
      }
      return Signature.of(start) == Signature.ZIP
          ? workbook(place, isHeader)
          : text(place, decoded(start), isHeader);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Optional<AnswerSheet> workbook(
      PackedFile place, Predicate<List<String>> isHeader) {
    List<String> header = new ArrayList<>();
    return SheetFinder.with(
            place,
            WIDEST,
            cells -> {
              boolean found = isHeader.test(cells);
              header.addAll(found ? cells : List.of());
              return found;
            })
        .map(name -> new FileFormat(TextFormat.FOUND_OUT, DAYS).onSheet(Optional.of(name)))
        .map(format -> of(place, format, header));
  }

  private static Optional<AnswerSheet> text(
      PackedFile place, String start, Predicate<List<String>> isHeader) {
    List<String> lines = start.lines().limit(DEEPEST).toList();
    for (Delimiter delimiter : Delimiter.values()) {
      for (String line : lines) {
        List<String> cells = cells(line, delimiter);
        if (isHeader.test(cells)) {
          TextFormat text =
              new TextFormat(Optional.of(delimiter), Optional.of(Quoting.DOUBLE), Optional.empty());
          return Optional.of(of(place, new FileFormat(text, DAYS), cells));
        }
      }
    }
    return Optional.empty();
  }

  private static AnswerSheet of(PackedFile place, FileFormat format, List<String> header) {
    return new AnswerSheet(ExportFile.inspect(place, format), format, header);
  }

  private static List<String> cells(String line, Delimiter delimiter) {
    return Arrays.stream(line.split(Pattern.quote("" + delimiter.sign()), -1))
        .map(cell -> cell.replace("\"", "").strip())
        .toList();
  }

  private static String decoded(byte[] start) {
    String text = new String(start, StandardCharsets.UTF_8);
    return text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
  }

  /**
   * Its rows. The caller closes them.
   *
   * @throws InputRefusedException when it is broken
   */
  Rows open(List<SheetWords> words) {
    List<String> wanted =
        header.stream()
            .filter(cell -> words.stream().anyMatch(one -> one.column(cell).isPresent()))
            .toList();
    return file.content() == ExportFile.Content.WORKBOOK
        ? XlsxFile.open(file, format, wanted, bytes -> {})
        : CsvFile.open(file, format, wanted, bytes -> {});
  }
}
