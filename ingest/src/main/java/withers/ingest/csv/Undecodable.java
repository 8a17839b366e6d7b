package withers.ingest.csv;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import withers.ingest.file.ExportFile;

/** Finds where the bytes of a file are no text in its character set. */
final class Undecodable {

  private static final int BUFFER = 1 << 13;

  private final CharsetDecoder decoder;
  private final ByteBuffer bytes = ByteBuffer.allocate(BUFFER);
  private final CharBuffer chars = CharBuffer.allocate(BUFFER);
  private long line = 1;

  private Undecodable(CharsetDecoder decoder) {
    this.decoder = decoder;
  }

  /**
   * The line of the first of them, by line feeds; the last line when the last character is cut off.
   * A reader runs ahead of the row at hand, and can't tell.
   */
  static long line(ExportFile file) throws IOException {
    Undecodable search =
        new Undecodable(
            file.charset()
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT));
    try (InputStream in = file.open()) {
      boolean more = true;
      while (more) {
        more = search.fill(in) && search.decode();
      }
    }
    return search.line;
  }

  private boolean fill(InputStream in) throws IOException {
    int read = in.read(bytes.array(), bytes.position(), bytes.remaining());
    bytes.position(bytes.position() + Math.max(0, read));
    return read > 0;
  }

  /** Whether it can go on. */
  private boolean decode() {
    bytes.flip();
    CoderResult result;
    do {
      result = decoder.decode(bytes, chars, false);
      chars.flip().chars().filter(c -> c == '\n').forEach(feed -> line++);
      chars.clear();
    } while (result.isOverflow());
    bytes.compact();
    return !result.isError();
  }
}
