package withers.log.sqlite;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32C;

/**
 * CRC-32C (RFC 3720, appendix B.4) over values one after another, each text and array with its
 * length.
 */
final class Checksum {

  private final CRC32C crc = new CRC32C();

  Checksum add(long value) {
    crc.update(ByteBuffer.allocate(Long.BYTES).putLong(0, value));
    return this;
  }

  Checksum add(byte[] bytes) {
    add(bytes.length);
    crc.update(bytes, 0, bytes.length);
    return this;
  }

  Checksum add(String text) {
    return add(text.getBytes(StandardCharsets.UTF_8));
  }

  long value() {
    return crc.getValue();
  }
}
