package withers.ingest.known;

import java.io.IOException;
import java.io.InputStream;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.Optional;

/**
 * Splits a CSV file (RFC 4180) into records without decoding it: a record ends at CR, LF or CR LF
 * outside quotes, a quote opens only at the start of a field, and two of them within stand for one.
 * For character sets that write quote, delimiter and line ends as ASCII does, and nothing else with
 * those bytes.
 */
final class RecordScanner {

  private static final VarHandle LONGS =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
  private static final int WORD = 8;
  private static final int BUFFER = 1 << 20;
  private static final int LONGEST = 1 << 24;
  private static final long ONES = 0x0101010101010101L;
  private static final long TOPS = 0x8080808080808080L;
  private static final long LINE_FEEDS = ONES * '\n';
  private static final long RETURNS = ONES * '\r';
  private static final int UNFINISHED = -1;
  private static final int NONE = -1;

  private final InputStream in;
  private final byte delimiter;
  private final int quote;
  private final long quotes;
  private byte[] bytes = new byte[BUFFER + WORD];
  private int limit;
  private boolean exhausted;
  private long base; // place in the file of the first byte held
  private int from;
  private int to;
  private int next; // where the next record starts
  private long line;
  private long nextLine;
  private long innerLines;

  /**
   * A scanner from the start of a record.
   *
   * @param in the caller closes it
   * @param quote empty when every sign is part of its field
   * @param offset the record's place in the file
   * @param line the line on which it starts, from 1
   */
  RecordScanner(InputStream in, char delimiter, Optional<Character> quote, long offset, long line) {
    this.in = in;
    this.delimiter = (byte) delimiter;
    this.quote = quote.map(sign -> (int) sign).orElse(NONE);
    this.quotes = ONES * quote.orElse('\n'); // without quotes, line ends are all there is to find
    this.base = offset;
    this.nextLine = line;
  }

  /**
   * Goes on to the next record, which may be an empty line.
   *
   * @return false at the end of the file
   * @throws UnrecognisableException when a record is too long to be held
   */
  boolean next() throws IOException {
    from = next;
    line = nextLine;
    to = end();
    while (to == UNFINISHED) {
      fill();
      to = end();
    }
    if (to == limit) {
      next = to;
      return to > from;
    }
    next = to + (isReturnAndLineFeed(to) ? 2 : 1);
    nextLine = line + innerLines + 1;
    return true;
  }

  private boolean isReturnAndLineFeed(int at) {
    return bytes[at] == '\r' && at + 1 < limit && bytes[at + 1] == '\n';
  }

  /** Where the record's line end stands, or the file ends. */
  private int end() {
    innerLines = 0;
    int at = special(from);
    while (at < limit && bytes[at] == quote) {
      boolean opens = at == from || bytes[at - 1] == delimiter;
      at = opens ? afterQuotes(at + 1) : at + 1;
      at = special(at);
    }
    // After a CR at the edge of what is held an LF may follow.
    boolean isWhole = at < limit - 1 || at < limit && bytes[at] == '\n';
    return isWhole || exhausted ? Math.min(at, limit) : UNFINISHED;
  }

  /** The first quote or line end from here on; the limit or more when there is none. */
  private int special(int from) {
    byte[] held = bytes;
    for (int at = from; at < limit; at += WORD) {
      long word = (long) LONGS.get(held, at);
      long hits = zeros(word ^ LINE_FEEDS) | zeros(word ^ RETURNS) | zeros(word ^ quotes);
      if (hits != 0) {
        return at + (Long.numberOfTrailingZeros(hits) >>> 3);
      }
    }
    return limit;
  }

  /** The top bit of the lowest byte that is zero; above it other bits may be set. */
  private static long zeros(long word) {
    return word - ONES & ~word & TOPS;
  }

  /** Behind the quote that closes a quoted text; the limit when none does. */
  private int afterQuotes(int from) {
    int at = special(from);
    while (at < limit) {
      if (bytes[at] != quote) {
        innerLines += bytes[at] == '\r' || bytes[at - 1] != '\r' ? 1 : 0;
      } else if (at + 1 < limit && bytes[at + 1] == quote) {
        at++;
      } else {
        return at + 1;
      }
      at = special(at + 1);
    }
    return limit;
  }

  /** Reads on, with the unfinished record kept. */
  private void fill() throws IOException {
    System.arraycopy(bytes, from, bytes, 0, limit - from);
    base += from;
    limit -= from;
    from = 0;
    if (limit == bytes.length - WORD) {
      grow();
    }
    int read = in.readNBytes(bytes, limit, bytes.length - WORD - limit);
    limit += read;
    exhausted = limit < bytes.length - WORD;
  }

  private void grow() {
    if (bytes.length > LONGEST) {
      throw new UnrecognisableException("a record of more than %,d bytes".formatted(LONGEST));
    }
    bytes = Arrays.copyOf(bytes, 2 * (bytes.length - WORD) + WORD);
  }

  /** The bytes that hold the record from {@link #from} to {@link #to}, without its line end. */
  byte[] bytes() {
    return bytes;
  }

  int from() {
    return from;
  }

  int to() {
    return to;
  }

  int length() {
    return to - from;
  }

  /** The length of the file, once its end is reached. */
  long size() {
    return base + limit;
  }

  /** How many lines the record takes, its last one included. */
  int height() {
    return (int) innerLines + 1;
  }

  /** The record's place in the file. */
  long offset() {
    return base + from;
  }

  /** The line on which the record starts. */
  long line() {
    return line;
  }
}
