package withers.ingest.known;

import java.util.Arrays;
import java.util.Optional;

/** The bytes of the first records that were not recognised: as many as memory is spared for. */
final class HeldRecords {

  private static final int FIRST = 1 << 13;
  private static final int MOST = 1 << 25;

  private final Numbers starts = new Numbers();
  private byte[] bytes = new byte[FIRST];
  private int size;
  private boolean isFull;

  /** Takes the next record. Once there is no room for one, none is held any more. */
  void add(byte[] from, int start, int length) {
    isFull |= (long) size + length > MOST;
    if (!isFull) {
      if (size + length > bytes.length) {
        bytes = Arrays.copyOf(bytes, Math.max(2 * bytes.length, size + length));
      }
      System.arraycopy(from, start, bytes, size, length);
      starts.add(size);
      size += length;
    }
  }

  /** The bytes of a record of this length; empty when they are not held. */
  Optional<byte[]> bytes(int record, int length) {
    return record < starts.size()
        ? Optional.of(Arrays.copyOfRange(bytes, starts.get(record), starts.get(record) + length))
        : Optional.empty();
  }
}
