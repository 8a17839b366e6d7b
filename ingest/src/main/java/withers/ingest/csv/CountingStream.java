package withers.ingest.csv;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.function.LongConsumer;

/** Tells how many bytes were read. */
final class CountingStream extends FilterInputStream {

  private final LongConsumer count;

  CountingStream(InputStream in, LongConsumer count) {
    super(in);
    this.count = count;
  }

  @Override
  public int read() throws IOException {
    int b = super.read();
    count.accept(b >= 0 ? 1 : 0);
    return b;
  }

  @Override
  public int read(byte[] buffer, int offset, int length) throws IOException {
    int read = super.read(buffer, offset, length);
    count.accept(Math.max(0, read));
    return read;
  }
}
