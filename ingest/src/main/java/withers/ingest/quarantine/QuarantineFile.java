package withers.ingest.quarantine;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import withers.id.SourceId;
import withers.ingest.csv.CsvText;
import withers.workspace.OwnerOnly;

/**
 * The quarantine of one import: a CSV file for its owner only, since rows hold people's details. It
 * is made for a spreadsheet: the export's own columns, one cell each, to be put right there, and
 * the file then ingested as it is. UTF-8 with a byte order mark, by which spreadsheets know it.
 *
 * <p>The name follows from the content, so that a repeated import adds no file; a file that
 * somebody has worked on is never written over.
 */
public final class QuarantineFile {

  private static final String BYTE_ORDER_MARK = "\uFEFF";
  private static final int DIGITS = 8;

  private QuarantineFile() {}

  /**
   * Writes the rows, whole or not at all.
   *
   * @param rows at least one
   */
  public static Path write(
      Path folder, SourceId source, LocalDate exportDate, List<QuarantinedRow> rows) {
    byte[] content = content(new QuarantineTable(source, exportDate, rows));
    String name = "%s-%s-%s".formatted(source, exportDate, digest(content));
    try {
      OwnerOnly.folder(folder);
      Path file = free(folder, name, content);
      if (!Files.exists(file)) {
        OwnerOnly.replace(file, content);
      }
      return file;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static byte[] content(QuarantineTable table) {
    StringBuilder text = new StringBuilder(BYTE_ORDER_MARK).append(CsvText.line(table.header()));
    table.lines().forEach(line -> text.append(CsvText.line(line)));
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  /** The first name that is free, or taken by this very content. */
  private static Path free(Path folder, String name, byte[] content) throws IOException {
    Path file = folder.resolve(name + ".csv");
    for (int i = 2; Files.exists(file) && !holds(file, content); i++) {
      file = folder.resolve("%s-%d.csv".formatted(name, i));
    }
    return file;
  }

  private static boolean holds(Path file, byte[] content) throws IOException {
    return Files.size(file) == content.length && Arrays.equals(Files.readAllBytes(file), content);
  }

  private static String digest(byte[] content) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(sha.digest(content)).substring(0, DIGITS);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java has no SHA-256", e);
    }
  }
}
