package withers.ingest.file;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HexFormat;
import withers.ingest.pack.PackedFile;
import withers.ingest.pack.Signature;
import withers.ingest.profile.FileFormat;
import withers.ingest.rows.Refusals;
import withers.source.InputRefusedException;

/**
 * A file that has been looked through once, from its first byte to its last. One that lies there
 * packed counts as if it were unpacked.
 *
 * @param place where its bytes are
 * @param name its name without folders; an archive's entry has both names
 * @param sha256 digest of its bytes, unpacked, lower-case hexadecimal
 * @param content what it is
 * @param charset of text: UTF-8 when the bytes are that, else what the profile names
 * @param size bytes, unpacked
 * @param endsWithNewline whether the last byte ends a line
 */
public record ExportFile(
    PackedFile place,
    String name,
    String sha256,
    Content content,
    Charset charset,
    long size,
    boolean endsWithNewline) {

  /** What a file is. */
  public enum Content {
    TEXT,
    WORKBOOK
  }

  private static final int BUFFER = 1 << 16;

  /**
   * Looks a file through that is not packed.
   *
   * @throws InputRefusedException when it is empty, binary, or in no character set that it may be
   *     in
   */
  public static ExportFile inspect(Path path, FileFormat format) {
    return inspect(PackedFile.plain(path), format);
  }

  /**
   * Looks a file through, packed or not.
   *
   * @throws InputRefusedException when it is empty, binary, damaged, or in no character set that it
   *     may be in
   */
  public static ExportFile inspect(PackedFile place, FileFormat format) {
    ByteScan scan = new ByteScan();
    try {
      Content content = content(place);
      scan(place, scan);
      return new ExportFile(
          place,
          place.name(),
          HexFormat.of().formatHex(scan.digest()),
          content,
          content == Content.TEXT ? charset(place.name(), scan, format) : StandardCharsets.UTF_8,
          scan.size(),
          scan.endsWithNewline());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Content content(PackedFile place) throws IOException {
    byte[] first;
    try (InputStream in = place.open()) {
      first = in.readNBytes(Signature.LENGTH);
    }
    return place.isWorkbook(first) ? Content.WORKBOOK : Content.TEXT;
  }

  private static void scan(PackedFile place, ByteScan scan) throws IOException {
    try (InputStream in = place.open()) {
      byte[] buffer = new byte[BUFFER];
      for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
        scan.take(buffer, read);
      }
    }
  }

  private static Charset charset(String name, ByteScan scan, FileFormat format) {
    if (scan.size() == 0) {
      throw Refusals.empty(name);
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

  /** The file's bytes, unpacked. The caller closes them. */
  public InputStream open() throws IOException {
    return place.open();
  }
}
