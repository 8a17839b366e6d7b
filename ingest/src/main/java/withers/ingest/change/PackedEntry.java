package withers.ingest.change;

import java.util.Arrays;

/**
 * A key and its value as they stand in a page: twice the key's length, the value's length, the key,
 * the value. Both lengths are unsigned, seven bits a byte, lowest first. A key has a byte or more,
 * so that no entry begins with zero; an entry that no longer counts has the lowest bit set.
 */
final class PackedEntry {

  private static final byte NO_LONGER = 1;

  private final byte[] page;
  private final int start;
  private final int key;
  private final int value;
  private final int end;

  /** Reads the entry that starts here. */
  PackedEntry(byte[] page, int start) {
    this.page = page;
    this.start = start;
    int lengths = behindNumber(page, start);
    this.key = behindNumber(page, lengths);
    this.value = key + (number(page, start) >>> 1);
    this.end = value + number(page, lengths);
  }

  /** How many bytes such an entry takes. */
  static int size(byte[] key, byte[] value) {
    return numberSize(key.length << 1) + numberSize(value.length) + key.length + value.length;
  }

  /** Writes an entry that starts here. */
  static void write(byte[] page, int start, byte[] key, byte[] value) {
    int at = putNumber(page, putNumber(page, start, key.length << 1), value.length);
    System.arraycopy(key, 0, page, at, key.length);
    System.arraycopy(value, 0, page, at + key.length, value.length);
  }

  boolean isOf(byte[] other) {
    return Arrays.equals(page, key, value, other, 0, other.length);
  }

  boolean counts() {
    return (page[start] & NO_LONGER) == 0;
  }

  void retire() {
    page[start] |= NO_LONGER;
  }

  /** Puts another value in the place of this one, if it is as long. */
  boolean replace(byte[] other) {
    if (other.length != end - value) {
      return false;
    }
    System.arraycopy(other, 0, page, value, other.length);
    return true;
  }

  /** Where the next one starts. */
  int end() {
    return end;
  }

  int size() {
    return end - start;
  }

  byte[] keyBytes() {
    return Arrays.copyOfRange(page, key, value);
  }

  byte[] valueBytes() {
    return Arrays.copyOfRange(page, value, end);
  }

  private static int numberSize(int number) {
    return number >>> 7 == 0 ? 1 : 1 + numberSize(number >>> 7);
  }

  private static int putNumber(byte[] page, int start, int number) {
    int at = start;
    for (int rest = number; ; rest >>>= 7) {
      page[at++] = (byte) (rest >>> 7 == 0 ? rest : rest | 0x80);
      if (rest >>> 7 == 0) {
        return at;
      }
    }
  }

  private static int behindNumber(byte[] page, int start) {
    int at = start;
    while (page[at++] < 0) {}
    return at;
  }

  private static int number(byte[] page, int start) {
    int number = 0;
    for (int at = start, shift = 0; ; at++, shift += 7) {
      number |= (page[at] & 0x7f) << shift;
      if (page[at] >= 0) {
        return number;
      }
    }
  }
}
