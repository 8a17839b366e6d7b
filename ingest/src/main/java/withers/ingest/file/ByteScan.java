package withers.ingest.file;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.util.Arrays;

/**
 * Looks at bytes one after another: whether they can be UTF-8 text (RFC 3629), and how they end.
 */
final class ByteScan {

  private static final VarHandle LONGS =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
  private static final long TOPS = 0x8080808080808080L;
  private static final long LINE_FEEDS = 0x0A0A0A0A0A0A0A0AL;
  private static final int HEAD = 1 << 16;

  private long size;
  private long line = 1;
  private long badLine;
  private long nulLine;
  private int tail = -1; // the last four bytes
  private byte[] head = new byte[0];
  private int awaited; // continuation bytes still to come
  private int lowest = 0x80; // bounds of the next continuation byte
  private int highest = 0xBF;

  void take(byte[] bytes, int length) {
    if (size == 0) {
      head = Arrays.copyOf(bytes, Math.min(length, HEAD));
    }
    for (int i = 0; i < length; i++) {
      i = passOverPlain(bytes, i, length);
      if (i < length) {
        take(bytes[i] & 0xFF);
      }
    }
    size += length;
    for (int i = Math.max(0, length - Integer.BYTES); i < length; i++) {
      tail = tail << Byte.SIZE | bytes[i] & 0xFF;
    }
  }

  /** Goes on by eight bytes, counting lines, as long as all of them are ASCII and none is NUL. */
  private int passOverPlain(byte[] bytes, int from, int length) {
    int at = from;
    while (awaited == 0 && at <= length - Long.BYTES) {
      long word = (long) LONGS.get(bytes, at);
      if ((word & TOPS) != 0 || zeros(word) != 0) {
        return at;
      }
      line += Long.bitCount(zeros(word ^ LINE_FEEDS));
      at += Long.BYTES;
    }
    return at;
  }

  /** The top bit of each byte that is zero, in a word of which no byte has its top bit set. */
  private static long zeros(long word) {
    return ~(word + ~TOPS) & TOPS;
  }

  private void take(int b) {
    if (awaited > 0) {
      continuation(b);
    } else if (b >= 0x80) {
      lead(b);
    } else {
      plain(b);
    }
  }

  private void plain(int b) {
    if (b == '\n') {
      line++;
    } else if (b == 0 && nulLine == 0) {
      nulLine = line;
    }
  }

  private void lead(int b) {
    if (b >= 0xC2 && b <= 0xDF) {
      await(1, 0x80, 0xBF);
    } else if (b >= 0xE0 && b <= 0xEF) {
      await(2, b == 0xE0 ? 0xA0 : 0x80, b == 0xED ? 0x9F : 0xBF);
    } else if (b >= 0xF0 && b <= 0xF4) {
      await(3, b == 0xF0 ? 0x90 : 0x80, b == 0xF4 ? 0x8F : 0xBF);
    } else {
      bad();
    }
  }

  private void await(int bytes, int from, int to) {
    awaited = bytes;
    lowest = from;
    highest = to;
  }

  private void continuation(int b) {
    if (b < lowest || b > highest) {
      bad();
      awaited = 0;
      take(b < 0x80 ? b : ' ');
      return;
    }
    await(awaited - 1, 0x80, 0xBF);
  }

  private void bad() {
    if (badLine == 0) {
      badLine = line;
    }
  }

  long size() {
    return size;
  }

  boolean hasNul() {
    return nulLine > 0;
  }

  /** The line of the first NUL byte, by line feeds; 0 when there is none. */
  long lineOfFirstNul() {
    return nulLine;
  }

  /** The first bytes, as many as came first, but not too many. */
  byte[] head() {
    return head.clone();
  }

  boolean isUtf8() {
    return badLine == 0 && awaited == 0;
  }

  /** The line on which the bytes first are no UTF-8; the last line when a character is cut off. */
  long lineOfFirstBadByte() {
    return badLine == 0 ? line : badLine;
  }

  /** Whether the last character ends a line, in this character set. */
  boolean endsWithNewline(Charset charset) {
    int last = tail & 0xFF;
    if (charset.name().startsWith("UTF-16")) {
      int unit = tail & 0xFFFF;
      last = charset.name().endsWith("LE") ? Short.reverseBytes((short) unit) & 0xFFFF : unit;
    } else if (charset.name().startsWith("UTF-32")) {
      last = charset.name().endsWith("LE") ? Integer.reverseBytes(tail) : tail;
    }
    return last == '\n' || last == '\r';
  }
}
