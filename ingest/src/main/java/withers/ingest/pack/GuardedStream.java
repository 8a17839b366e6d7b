package withers.ingest.pack;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import org.apache.commons.compress.utils.InputStreamStatistics;
import withers.source.InputRefusedException;

/**
 * Unpacks within bounds: so many bytes, so many for each packed byte. What is cut off or damaged is
 * refused, never read as if it ended there.
 */
final class GuardedStream extends FilterInputStream {

  /** The most bytes that an export may have. */
  static final long MOST_BYTES = 20L << 30;

  /** Rows of an export rarely pack to less than a fiftieth; deflate can do a thousandth. */
  static final int MOST_DENSE = 200;

  private static final long FREE = 1 << 20;

  private final String name;
  private long bytes;

  GuardedStream(InputStream unpacking, String name) {
    super(unpacking);
    this.name = name;
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
  }

  @Override
  public int read(byte[] buffer, int offset, int length) {
    try {
      int read = in.read(buffer, offset, length);
      bytes += Math.max(0, read);
      check();
      return read;
    } catch (IOException damaged) {
      throw PackRefusals.damaged(name, damaged);
    }
  }

  @Override
  public long skip(long count) throws IOException {
    return in.skip(0);
  }

  @Override
  public boolean markSupported() {
    return false;
  }

  private void check() throws InputRefusedException {
    if (bytes > MOST_BYTES) {
      throw PackRefusals.tooLarge(name, MOST_BYTES);
    }
    if (bytes > FREE
        && in instanceof InputStreamStatistics packed
        && bytes / MOST_DENSE > packed.getCompressedCount()) {
      throw PackRefusals.tooDense(name, MOST_DENSE);
    }
  }
}
