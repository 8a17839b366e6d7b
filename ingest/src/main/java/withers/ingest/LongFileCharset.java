package withers.ingest;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import withers.ingest.pack.PackedFile;
import withers.ingest.sniff.CharsetSniffer;
import withers.ingest.sniff.Finding;
import withers.ingest.sniff.Sniffer;

/**
 * The character set of a file that is longer than a sample: its first letter beyond ASCII may stand
 * anywhere, so all lines that have one are gathered.
 */
final class LongFileCharset {

  private static final int LONGEST_LINE = 1 << 16;

  private LongFileCharset() {}

  static Finding<Charset> of(PackedFile file, byte[] sample) {
    Finding<Charset> wide = CharsetSniffer.mark(sample);
    Finding<Charset> marked = wide.best().isPresent() ? wide : CharsetSniffer.nuls(sample);
    if (marked.best().isPresent()) {
      return marked;
    }
    byte[] lines = linesBeyondAscii(file);
    Finding<Charset> utf8 = CharsetSniffer.utf8(lines);
    return utf8.best().isPresent() ? utf8 : CharsetSniffer.detected(lines);
  }

  private static byte[] linesBeyondAscii(PackedFile file) {
    ByteArrayOutputStream lines = new ByteArrayOutputStream();
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    boolean beyond = false;
    try (InputStream in = new BufferedInputStream(file.open())) {
      for (int b = in.read(); b >= 0 && lines.size() < Sniffer.SAMPLE; b = in.read()) {
        line.write(b);
        beyond |= b >= 0x80;
        if (b == '\n' || line.size() >= LONGEST_LINE) {
          if (beyond) {
            line.writeTo(lines);
          }
          line.reset();
          beyond = false;
        }
      }
      if (beyond) {
        line.writeTo(lines);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return lines.toByteArray();
  }
}
