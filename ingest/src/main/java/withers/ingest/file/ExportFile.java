package withers.ingest.file;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import withers.ingest.profile.FileFormat;
import withers.ingest.rows.Refusals;
import withers.source.InputRefusedException;

/**
 * A file that has been looked through once, from its first byte to its last.
 *
 * @param name its name without folders
 * @param sha256 digest of its bytes, lower-case hexadecimal
 * @param charset UTF-8 when the bytes are that, else what the profile names
 * @param endsWithNewline whether the last byte ends a line
 */
public record ExportFile(
    Path path, String name, String sha256, Charset charset, long size, boolean endsWithNewline) {

  private static final int BUFFER = 1 << 16;

  /**
   * Looks a file through.
   *
   * @throws InputRefusedException when it is empty, binary, or in no character set that it may be
   *     in
   */
  public static ExportFile inspect(Path path, FileFormat format) {
    String name = path.getFileName().toString();
    ByteScan scan = new ByteScan();
    try (InputStream in = Files.newInputStream(path)) {
      byte[] buffer = new byte[BUFFER];
      for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
        scan.take(buffer, read);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new ExportFile(
        path,
        name,
        HexFormat.of().formatHex(scan.digest()),
        charset(name, scan, format),
        scan.size(),
        scan.endsWithNewline());
  }

  private static Charset charset(String name, ByteScan scan, FileFormat format) {
    if (scan.size() == 0) {
      throw Refusals.empty(name);
    }
    if (scan.looksZipped()) {
      throw Refusals.binary(name, "a spreadsheet or an archive");
    }
    boolean wide =
        format.charset().name().startsWith("UTF-16")
            || format.charset().name().startsWith("UTF-32");
    if (scan.hasNul() && !wide) {
      throw Refusals.binary(name, "a binary file, or text in UTF-16");
    }
    if (scan.isUtf8() && !wide) {
      return StandardCharsets.UTF_8;
    }
    if (format.charset().equals(StandardCharsets.UTF_8)) {
      throw Refusals.charset(name, "UTF-8", scan.lineOfFirstBadByte());
    }
    return format.charset();
  }

  /** The file's bytes. The caller closes them. */
  public InputStream open() throws IOException {
    return Files.newInputStream(path);
  }
}
