package withers.report.privacy;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** XML without its tags: a workbook writes each cell between some. */
final class WithoutTags extends FilterInputStream {
  private boolean inTag;

  WithoutTags(InputStream in) {
    super(in);
  }

  @Override
  public int read() throws IOException {
    int next = in.read();
    while (next >= 0 && (inTag || next == '<')) {
      inTag = next != '>';
      next = in.read();
    }
    return next;
  }

  @Override
  public int read(byte[] bytes, int from, int length) throws IOException {
    int read = 0;
    for (int next = 0; read < length && next >= 0; ) {
      next = read();
      if (next >= 0) {
        bytes[from + read++] = (byte) next;
      }
    }
    return read == 0 && length > 0 ? -1 : read;
  }
}
