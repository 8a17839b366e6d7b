package withers.log.sqlite;

import com.github.luben.zstd.Zstd;
import com.github.luben.zstd.ZstdException;
import withers.log.LogDamagedException;

/**
 * One row of the log: events of one batch, compressed.
 *
 * @param events how many events it holds
 * @param length bytes before compression
 * @param checksum over the stored bytes and everything that says where they belong
 */
record Chunk(ChunkPlace place, int events, int length, long checksum, Body body) {

  /** The compressed bytes. */
  static final class Body {
    private final byte[] bytes;

    Body(byte[] bytes) {
      this.bytes = bytes;
    }

    byte[] bytes() {
      return bytes;
    }
  }

  private static final int LEVEL = 3;

  /** No chunk of ours comes near it; a damaged length must not set aside the whole memory. */
  private static final int LONGEST = 256 << 20;

  static Chunk of(ChunkPlace place, int events, byte[] plain) {
    Body body = new Body(Zstd.compress(plain, LEVEL));
    return new Chunk(
        place, events, plain.length, checksum(place, events, plain.length, body), body);
  }

  ChunkHead head() {
    return new ChunkHead(place.sequence(), place.piece(), events, checksum);
  }

  /**
   * The bytes before compression.
   *
   * @throws LogDamagedException when the row is not as it was written
   */
  byte[] plain() {
    if (length < 0 || length > LONGEST || checksum != checksum(place, events, length, body)) {
      throw new LogDamagedException(place + ": the checksum does not fit; restore a backup");
    }
    try {
      return Zstd.decompress(body.bytes(), length);
    } catch (ZstdException e) {
      throw new LogDamagedException(place + ": can't be decompressed; restore a backup", e);
    }
  }

  private static long checksum(ChunkPlace place, int events, int length, Body body) {
    return new Checksum()
        .add(place.stream())
        .add(place.partition())
        .add(Ids.bytes(place.importId()))
        .add(place.sequence())
        .add(place.piece())
        .add(events)
        .add(length)
        .add(body.bytes())
        .value();
  }
}
