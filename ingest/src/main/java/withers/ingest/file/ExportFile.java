package withers.ingest.file;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import withers.ingest.pack.PackedFile;
import withers.ingest.pack.Signature;
import withers.ingest.profile.FileFormat;
import withers.source.InputRefusedException;

/**
 * A file that has been looked through once, from its first byte to its last. One that lies there
 * packed counts as if it were unpacked.
 *
 * @param place where its bytes are
 * @param name its name without folders; an archive's entry has both names
 * @param digest of its bytes, unpacked
 * @param content what it is
 * @param charset of text: UTF-8 when the bytes are that, else what the profile names, else what was
 *     found out
 * @param size bytes, unpacked
 * @param endsWithNewline whether the last character ends a line
 * @param remarks what a person should know about how it is read, a sentence each
 */
public record ExportFile(
    PackedFile place,
    String name,
    FileDigest digest,
    Content content,
    Charset charset,
    long size,
    boolean endsWithNewline,
    List<String> remarks) {

  public ExportFile {
    remarks = List.copyOf(remarks);
  }

  /** What a file is. */
  public enum Content {
    TEXT,
    WORKBOOK
  }

  private static final int BUFFER = 1 << 18;

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
      FileDigest digest = FileDigest.of(place);
      scan(place, scan);
      CharsetChoice choice =
          content == Content.TEXT
              ? CharsetChoice.of(place, scan, format.text().charset())
              : new CharsetChoice(StandardCharsets.UTF_8, List.of());
      return new ExportFile(
          place,
          place.name(),
          digest,
          content,
          choice.charset(),
          scan.size(),
          scan.endsWithNewline(choice.charset()),
          choice.remarks());
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

  /** The digest in lower-case hexadecimal. */
  public String sha256() {
    return digest.hex();
  }

  /** The same file, when its end plays no part. */
  public ExportFile withoutItsEnd() {
    return new ExportFile(place, name, digest, content, charset, size, true, remarks);
  }

  /** The file's bytes, unpacked. The caller closes them. */
  public InputStream open() throws IOException {
    return place.open();
  }
}
