package withers.log;

import java.util.List;
import java.util.function.Consumer;

/**
 * Turns a chunk of events into bytes and back. Stateless between chunks; safe for several threads.
 */
public interface ChunkCodec<E> {

  byte[] encode(List<E> events);

  /**
   * Hands every event of the chunk to the consumer, in order.
   *
   * @throws LogDamagedException when the bytes are not a chunk, or of a version that this program
   *     does not know
   */
  void decode(byte[] chunk, Consumer<? super E> consumer);
}
