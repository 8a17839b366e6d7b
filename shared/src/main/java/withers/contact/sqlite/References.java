package withers.contact.sqlite;

import java.nio.ByteBuffer;
import withers.contact.ContactRef;

/** References as 17 bytes that sort as they do. */
final class References {

  private References() {}

  static byte[] bytes(ContactRef reference) {
    return ByteBuffer.allocate(1 + 2 * Long.BYTES)
        .put((byte) reference.keyId())
        .putLong(reference.high())
        .putLong(reference.low())
        .array();
  }

  static ContactRef read(byte[] bytes) {
    ByteBuffer in = ByteBuffer.wrap(bytes);
    return new ContactRef(in.get() & 0xff, in.getLong(), in.getLong());
  }
}
