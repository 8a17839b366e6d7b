package withers.ingest.xlsx;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** Ends with an error where a single tag or text is so long that it would fill the memory. */
final class TagGuard extends FilterInputStream {

  private final long most;
  private long bytes;
  private int sinceTag;

  /**
   * @param most how many bytes there may be
   */
  TagGuard(InputStream in, long most) {
    super(in);
    this.most = most;
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
  }

  @Override
  public int read(byte[] buffer, int offset, int length) throws IOException {
    int read = in.read(buffer, offset, length);
    for (int i = offset; i < offset + read; i++) {
      sinceTag = buffer[i] == '<' ? 0 : sinceTag + 1;
      if (sinceTag > Bounds.BETWEEN_TAGS) {
        throw new IOException("A tag or a text is longer than %d bytes".formatted(sinceTag));
      }
    }
    bytes += Math.max(0, read);
    if (bytes > most) {
      throw new IOException("The part is longer than %d bytes".formatted(most));
    }
    return read;
  }
}
