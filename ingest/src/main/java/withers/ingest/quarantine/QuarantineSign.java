package withers.ingest.quarantine;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import withers.ingest.pack.Signature;
import withers.ingest.sniff.Delimiter;
import withers.ingest.xlsx.SheetFinder;

/** Recognises quarantine files, whatever delimiter or form a spreadsheet has saved them with. */
public final class QuarantineSign {

  private static final byte[] BYTE_ORDER_MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};
  private static final int START = 256;

  private QuarantineSign() {}

  /** The delimiter of a quarantine file that is text; empty when the file is none. */
  public static Optional<Delimiter> delimiter(Path file) {
    String start = start(file);
    return Arrays.stream(Delimiter.values())
        .filter(delimiter -> hasOurColumns(start, delimiter.sign()))
        .findFirst();
  }

  /** The sheet of a quarantine file that was saved as a spreadsheet; empty when it is none. */
  public static Optional<String> sheet(Path file) {
    return Signature.of(file) == Signature.ZIP
        ? SheetFinder.beginningWith(file, QuarantineColumns.OURS)
        : Optional.empty();
  }

  private static String start(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      byte[] start = in.readNBytes(START);
      int from = startsWithMark(start) ? BYTE_ORDER_MARK.length : 0;
      return new String(start, from, start.length - from, StandardCharsets.US_ASCII);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean startsWithMark(byte[] start) {
    return start.length >= BYTE_ORDER_MARK.length
        && Arrays.equals(start, 0, BYTE_ORDER_MARK.length, BYTE_ORDER_MARK, 0, 3);
  }

  private static boolean hasOurColumns(String start, char delimiter) {
    int count = QuarantineColumns.OURS.size();
    String[] cells = start.split(java.util.regex.Pattern.quote("" + delimiter), count + 1);
    return cells.length > count
        && Arrays.stream(cells, 0, count)
            .map(cell -> cell.replace("\"", "").strip())
            .toList()
            .equals(List.copyOf(QuarantineColumns.OURS));
  }
}
