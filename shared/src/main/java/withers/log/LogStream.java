package withers.log;

/**
 * A named stream of the log and how its events are written. Partition count changes only by copying
 * the log.
 *
 * @param name stable name, also the topic's
 * @param partitions number of partitions, from 1
 * @param codec how a chunk of events becomes bytes and back
 */
public record LogStream<E>(String name, int partitions, ChunkCodec<E> codec) {}
