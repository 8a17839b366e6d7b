package withers.log.sqlite;

import java.nio.ByteBuffer;
import java.util.Optional;
import java.util.UUID;
import withers.id.ImportId;

/** Import ids as 16 bytes, none as no bytes. */
final class Ids {

  private Ids() {}

  static byte[] bytes(ImportId id) {
    UUID uuid = id.value();
    return ByteBuffer.allocate(2 * Long.BYTES)
        .putLong(uuid.getMostSignificantBits())
        .putLong(uuid.getLeastSignificantBits())
        .array();
  }

  static byte[] bytes(Optional<ImportId> id) {
    return id.map(Ids::bytes).orElseGet(() -> new byte[0]);
  }
}
