package withers.matching.form;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/** Reads what a {@link ByteWriter} wrote, in the same order. */
final class ByteReader {
  private final byte[] bytes;
  private int at;

  ByteReader(byte[] bytes) {
    this.bytes = bytes;
  }

  int count() {
    return (int) number();
  }

  long number() {
    long number = 0;
    int shift = 0;
    byte next;
    do {
      next = bytes[at++];
      number |= (next & 0x7fL) << shift;
      shift += 7;
    } while (next < 0);
    return number;
  }

  boolean flag() {
    return bytes[at++] != 0;
  }

  <E extends Enum<E>> E kind(E[] kinds) {
    return kinds[bytes[at++]];
  }

  String text() {
    int stated = count();
    return (stated & 1) == 0 ? narrow(stated >> 1) : wide(stated >> 1);
  }

  private String narrow(int length) {
    at += length;
    return length == 0 ? "" : new String(bytes, at - length, length, StandardCharsets.ISO_8859_1);
  }

  // A decoder of UTF-16 would replace halves of surrogate pairs.
  private String wide(int length) {
    char[] text = new char[length];
    for (int i = 0; i < length; i++, at += 2) {
      text[i] = (char) ((bytes[at] & 0xff) << 8 | bytes[at + 1] & 0xff);
    }
    return new String(text);
  }

  List<String> texts() {
    return several(this::text);
  }

  /** As many as the number here says, each read by {@code one}. */
  <T> List<T> several(Supplier<T> one) {
    int count = count();
    if (count < 2) {
      return count == 0 ? List.of() : List.of(one.get());
    }
    List<T> all = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      all.add(one.get());
    }
    return List.copyOf(all);
  }
}
