package withers.codec;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import withers.contact.ContactRef;

/** A growing array of bytes with the encodings that all binary forms share. */
public final class Bytes {

  private static final int LONGEST_VARINT = 10;

  private byte[] bytes;
  private int size;

  public Bytes() {
    this(256);
  }

  /**
   * @param capacity how many bytes are expected; more find room too
   */
  Bytes(int capacity) {
    bytes = new byte[capacity];
  }

  /** An unsigned number, seven bits a byte, lowest first; the top bit says that more follow. */
  public void unsigned(long value) {
    room(LONGEST_VARINT);
    if (value >>> 7 == 0) { // most are
      bytes[size++] = (byte) value;
      return;
    }
    long rest = value;
    while ((rest & ~0x7fL) != 0) {
      bytes[size++] = (byte) (rest | 0x80);
      rest >>>= 7;
    }
    bytes[size++] = (byte) rest;
  }

  /** A signed number: zigzag, so that small ones of either sign are short. */
  public void signed(long value) {
    unsigned(value << 1 ^ value >> 63);
  }

  /** Length in bytes, then UTF-8. */
  public void text(String value) {
    int length = value.length();
    room(LONGEST_VARINT + length);
    int start = size;
    unsigned(length);
    for (int i = 0; i < length; i++) {
      char c = value.charAt(i);
      if (c >= 0x80) {
        size = start;
        encoded(value);
        return;
      }
      bytes[size++] = (byte) c;
    }
  }

  private void encoded(String value) {
    try {
      ByteBuffer utf8 = StandardCharsets.UTF_8.newEncoder().encode(CharBuffer.wrap(value));
      unsigned(utf8.remaining());
      room(utf8.remaining());
      int length = utf8.remaining();
      utf8.get(bytes, size, length);
      size += length;
    } catch (CharacterCodingException e) {
      throw new IllegalArgumentException(
          "Expected text of whole Unicode characters, but found half of a surrogate pair", e);
    }
  }

  /** Key id and 16 bytes. */
  public void reference(ContactRef value) {
    room(1);
    bytes[size++] = (byte) value.keyId();
    eight(value.high());
    eight(value.low());
  }

  /** Eight bytes, the highest first. */
  public void eight(long value) {
    room(Long.BYTES);
    for (int shift = 56; shift >= 0; shift -= 8) {
      bytes[size++] = (byte) (value >>> shift);
    }
  }

  /** Length, then these bytes as they are. */
  public void all(byte[] value) {
    unsigned(value.length);
    room(value.length);
    System.arraycopy(value, 0, bytes, size, value.length);
    size += value.length;
  }

  byte[] array() {
    return bytes;
  }

  int size() {
    return size;
  }

  public byte[] toArray() {
    return Arrays.copyOf(bytes, size);
  }

  void clear() {
    size = 0;
  }

  private void room(int more) {
    if (bytes.length - size < more) {
      bytes = Arrays.copyOf(bytes, Math.max(bytes.length * 2, size + more));
    }
  }
}
