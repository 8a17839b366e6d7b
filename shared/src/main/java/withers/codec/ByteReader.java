package withers.codec;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import withers.contact.ContactRef;
import withers.log.LogDamagedException;

/**
 * Reads what {@link Bytes} wrote, and trusts none of it: nothing larger than the bytes themselves
 * is ever set aside.
 */
public final class ByteReader {

  private static final VarHandle EIGHT =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.BIG_ENDIAN);

  private final byte[] bytes;
  private int at;

  public ByteReader(byte[] bytes) {
    this.bytes = bytes;
  }

  /** Whether everything was read. */
  public boolean atEnd() {
    return at == bytes.length;
  }

  /** What is wrong at this place. */
  public LogDamagedException damaged(String what) {
    return new LogDamagedException("Damaged chunk: %s at byte %d".formatted(what, at));
  }

  /** As {@link Bytes#unsigned} wrote it. */
  public long unsigned() {
    byte first = next();
    return first >= 0 ? first : longer(first & 0x7fL); // most are one byte
  }

  private long longer(long first) {
    long value = first;
    for (int shift = 7; shift < Long.SIZE; shift += 7) {
      byte next = next();
      value |= (next & 0x7fL) << shift;
      if (next >= 0) {
        return value;
      }
    }
    throw damaged("a number that does not end");
  }

  public long signed() {
    long value = unsigned();
    return value >>> 1 ^ -(value & 1);
  }

  /** A count of things of which each takes a byte or more. */
  public int length(String what) {
    long length = unsigned();
    if (length < 0 || length > bytes.length - at) {
      throw damaged("%s longer than the chunk".formatted(what));
    }
    return (int) length;
  }

  public String text() {
    int length = length("a text");
    String text = new String(bytes, at, length, StandardCharsets.UTF_8);
    if (text.indexOf('\uFFFD') >= 0 && !isUtf8Of(text, length)) {
      throw damaged("a text that is not UTF-8");
    }
    at += length;
    return text;
  }

  // Bytes that are no UTF-8 decode to the same replacement that a text may hold by right.
  private boolean isUtf8Of(String text, int length) {
    byte[] again = text.getBytes(StandardCharsets.UTF_8);
    return Arrays.equals(again, Arrays.copyOfRange(bytes, at, at + length));
  }

  /** As {@link Bytes#all} wrote them. */
  public byte[] all(String what) {
    int length = length(what);
    byte[] value = Arrays.copyOfRange(bytes, at, at + length);
    at += length;
    return value;
  }

  public ContactRef reference() {
    int keyId = next() & 0xff;
    return new ContactRef(keyId, eight(), eight());
  }

  public long eight() {
    if (bytes.length - at < Long.BYTES) {
      throw damaged("bytes missing");
    }
    long value = (long) EIGHT.get(bytes, at);
    at += Long.BYTES;
    return value;
  }

  private byte next() {
    if (at >= bytes.length) {
      throw damaged("bytes missing");
    }
    return bytes[at++];
  }
}
