package withers.matching.form;

import java.util.Arrays;
import java.util.List;

/**
 * Writes numbers and texts one after another. A number takes seven bits a byte, the lowest first; a
 * text its length and one byte a character, or two where a character is not of Latin-1, so that any
 * text comes back as it was, halves of surrogate pairs included.
 */
final class ByteWriter {
  private byte[] bytes = new byte[160];
  private int length;

  void number(long number) {
    long left = number;
    while ((left & ~0x7fL) != 0) {
      one((int) (left | 0x80));
      left >>>= 7;
    }
    one((int) left);
  }

  void flag(boolean flag) {
    one(flag ? 1 : 0);
  }

  void kind(Enum<?> kind) {
    one(kind.ordinal());
  }

  void text(String text) {
    boolean wide = isWide(text);
    number(2L * text.length() + (wide ? 1 : 0));
    room(2 * text.length());
    for (int i = 0; i < text.length(); i++) {
      if (wide) {
        bytes[length++] = (byte) (text.charAt(i) >> 8);
      }
      bytes[length++] = (byte) text.charAt(i);
    }
  }

  void texts(List<String> texts) {
    number(texts.size());
    texts.forEach(this::text);
  }

  private static boolean isWide(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) > 0xff) {
        return true;
      }
    }
    return false;
  }

  private void one(int value) {
    room(1);
    bytes[length++] = (byte) value;
  }

  private void room(int more) {
    if (bytes.length - length < more) {
      bytes = Arrays.copyOf(bytes, 2 * bytes.length + more);
    }
  }

  byte[] written() {
    return Arrays.copyOf(bytes, length);
  }
}
