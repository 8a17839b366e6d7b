package withers.ingest.file;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/**
 * Looks at bytes one after another: their digest, and whether they can be UTF-8 text (RFC 3629).
 */
final class ByteScan {

  private final MessageDigest sha = sha256();
  private long size;
  private long line = 1;
  private long badLine;
  private boolean nul;
  private int last = -1;
  private int awaited; // continuation bytes still to come
  private int lowest = 0x80; // bounds of the next continuation byte
  private int highest = 0xBF;

  void take(byte[] bytes, int length) {
    sha.update(bytes, 0, length);
    for (int i = 0; i < length; i++) {
      take(bytes[i] & 0xFF);
    }
    size += length;
    last = length > 0 ? bytes[length - 1] : last;
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
    } else if (b == 0) {
      nul = true;
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
    return nul;
  }

  boolean isUtf8() {
    return badLine == 0 && awaited == 0;
  }

  /** The line on which the bytes first are no UTF-8; the last line when a character is cut off. */
  long lineOfFirstBadByte() {
    return badLine == 0 ? line : badLine;
  }

  boolean endsWithNewline() {
    return last == '\n' || last == '\r';
  }

  byte[] digest() {
    return sha.digest();
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java has no SHA-256", e);
    }
  }
}
