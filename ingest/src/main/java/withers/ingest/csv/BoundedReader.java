package withers.ingest.csv;

import java.io.BufferedReader;
import java.io.FilterReader;
import java.io.IOException;

/**
 * Stops when one row takes up more than memory should hold. What is already buffered counts for the
 * row at hand, so the bound is not exact.
 */
final class BoundedReader extends FilterReader {

  /** A row is beyond all measure. */
  static final class TooLongException extends IOException {
    private static final long serialVersionUID = 1L;
  }

  /** Text holds a NUL character. */
  static final class NulException extends IOException {
    private static final long serialVersionUID = 1L;
  }

  private final int most;
  private final boolean mayHoldNul;
  private long sinceRow;

  /**
   * @param most characters of a row
   * @param mayHoldNul whether the bytes did not show already that there is no NUL character
   */
  BoundedReader(BufferedReader in, int most, boolean mayHoldNul) {
    super(in);
    this.most = most;
    this.mayHoldNul = mayHoldNul;
  }

  /**
   * Passes lines over, however they end.
   *
   * @return how many of them were not blank
   */
  long skipLines(long lines) throws IOException {
    long filled = 0;
    for (long line = 0; line < lines; line++) {
      filled += skipLine() ? 1 : 0;
    }
    return filled;
  }

  private boolean skipLine() throws IOException {
    boolean filled = false;
    int c = in.read();
    while (c >= 0 && c != '\n' && c != '\r') {
      filled |= !Character.isWhitespace(c);
      c = in.read();
    }
    in.mark(1);
    if (c == '\r' && in.read() != '\n') {
      in.reset();
    }
    return filled;
  }

  /** Another row starts. */
  void nextRow() {
    sinceRow = 0;
  }

  @Override
  public int read() throws IOException {
    char[] one = new char[1];
    return read(one, 0, 1) < 0 ? -1 : one[0];
  }

  @Override
  public int read(char[] buffer, int offset, int length) throws IOException {
    if (sinceRow > most) {
      throw new TooLongException();
    }
    int read = super.read(buffer, offset, length);
    sinceRow += Math.max(0, read);
    if (mayHoldNul) {
      requireNoNul(buffer, offset, read);
    }
    return read;
  }

  private static void requireNoNul(char[] buffer, int offset, int read) throws IOException {
    for (int i = offset; i < offset + read; i++) {
      if (buffer[i] == 0) {
        throw new NulException();
      }
    }
  }
}
