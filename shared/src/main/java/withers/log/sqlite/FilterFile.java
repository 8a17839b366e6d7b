package withers.log.sqlite;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.zip.CRC32C;

/**
 * One import's filters as bytes: how long each partition's part is, and then the parts. Each ends
 * with a checksum of its own, so that one can be read without the others.
 */
final class FilterFile {

  /** "WTC", and the format's number in the last byte. */
  private static final int MAGIC = 0x57544301;

  private static final int CHECKSUM_BYTES = Long.BYTES;

  /** What a chunk's head takes. */
  private static final int HEAD_BYTES = 3 * Long.BYTES + Integer.BYTES;

  private final int partitions;

  FilterFile(int partitions) {
    this.partitions = partitions;
  }

  /** The whole file. */
  byte[] write(Map<Integer, Map<ChunkHead, ChipFilter>> filters) {
    ByteBuffer lengths = ByteBuffer.allocate(frontBytes()).putInt(MAGIC);
    ByteBuffer[] parts = new ByteBuffer[partitions];
    int all = lengths.capacity();
    for (int i = 0; i < partitions; i++) {
      parts[i] = part(filters.getOrDefault(i, Map.of()));
      lengths.putInt(parts[i].capacity());
      all += parts[i].capacity();
    }
    ByteBuffer file = ByteBuffer.allocate(all).put(sealed(lengths));
    for (ByteBuffer part : parts) {
      file.put(part);
    }
    return file.array();
  }

  private int frontBytes() {
    return Integer.BYTES * (1 + partitions) + CHECKSUM_BYTES;
  }

  private static ByteBuffer part(Map<ChunkHead, ChipFilter> filters) {
    int bytes = filters.values().stream().mapToInt(one -> HEAD_BYTES + one.bytes()).sum();
    ByteBuffer part = ByteBuffer.allocate(bytes + CHECKSUM_BYTES);
    filters.forEach(
        (head, filter) -> {
          part.putLong(head.sequence()).putLong(head.piece());
          part.putInt(head.events()).putLong(head.checksum());
          filter.write(part);
        });
    return sealed(part);
  }

  private static ByteBuffer sealed(ByteBuffer bytes) {
    return bytes.putLong(checksum(bytes)).flip();
  }

  private static long checksum(ByteBuffer bytes) {
    CRC32C crc = new CRC32C();
    crc.update(bytes.duplicate().position(0).limit(bytes.capacity() - CHECKSUM_BYTES));
    return crc.getValue();
  }

  /** One partition's filters; empty when the file is not, or no longer, as it was written. */
  Optional<Map<ChunkHead, ChipFilter>> read(FileChannel file, int partition) throws IOException {
    Optional<ByteBuffer> lengths = read(file, 0, frontBytes()).filter(b -> b.getInt() == MAGIC);
    if (lengths.isEmpty()) {
      return Optional.empty();
    }
    long from = frontBytes();
    for (int i = 0; i < partition; i++) {
      from += lengths.get().getInt();
    }
    return read(file, from, lengths.get().getInt()).map(FilterFile::filters);
  }

  private static Optional<ByteBuffer> read(FileChannel file, long from, int bytes)
      throws IOException {
    ByteBuffer part = ByteBuffer.allocate(bytes);
    while (part.hasRemaining()) {
      if (file.read(part, from + part.position()) < 0) {
        return Optional.empty();
      }
    }
    int end = bytes - CHECKSUM_BYTES;
    return part.getLong(end) == checksum(part)
        ? Optional.of(part.position(0).limit(end))
        : Optional.empty();
  }

  private static Map<ChunkHead, ChipFilter> filters(ByteBuffer part) {
    Map<ChunkHead, ChipFilter> filters = new HashMap<>();
    while (part.hasRemaining()) {
      ChunkHead head = new ChunkHead(part.getLong(), part.getLong(), part.getInt(), part.getLong());
      filters.put(head, ChipFilter.read(part));
    }
    return filters;
  }
}
