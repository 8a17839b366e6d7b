package withers.ingest.file;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import withers.ingest.pack.PackedFile;

/** The lines of a file that tell its character set: those with bytes beyond ASCII. */
final class TellingLines {

  private static final int MOST = 1 << 16;
  private static final int LONGEST = 1 << 12;

  private final ByteArrayOutputStream lines = new ByteArrayOutputStream();
  private final ByteArrayOutputStream line = new ByteArrayOutputStream();
  private boolean tells;

  private TellingLines() {}

  /** The first of them, and not too many; a line that is very long is cut. */
  static byte[] of(PackedFile file) throws IOException {
    TellingLines telling = new TellingLines();
    try (InputStream in = new BufferedInputStream(file.open(), MOST)) {
      for (int b = in.read(); b >= 0 && telling.lines.size() < MOST; b = in.read()) {
        telling.take(b);
      }
    }
    telling.endLine();
    return telling.lines.toByteArray();
  }

  private void take(int b) {
    tells |= b >= 0x80;
    line.write(b);
    if (b == '\n' || b == '\r' || line.size() == LONGEST) {
      endLine();
    }
  }

  private void endLine() {
    if (tells) {
      lines.writeBytes(line.toByteArray());
    }
    line.reset();
    tells = false;
  }
}
