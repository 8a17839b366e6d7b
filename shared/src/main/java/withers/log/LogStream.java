package withers.log;

/**
 * A named stream of the log and how its events are written. Partition count changes only by copying
 * the log.
 *
 * @param name stable name, also the topic's; it stands for one type of event
 * @param partitions number of partitions, from 1
 * @param codec how a chunk of events becomes bytes and back
 */
public record LogStream<E>(String name, int partitions, ChunkCodec<E> codec) {

  public LogStream {
    if (partitions < 1) {
      throw new IllegalArgumentException(
          "Expected at least one partition of %s, but found %d".formatted(name, partitions));
    }
  }

  /**
   * Returns a partition that the stream has.
   *
   * @throws IllegalArgumentException when it has none of this number
   */
  public int requirePartition(int partition) {
    if (partition < 0 || partition >= partitions) {
      throw new IllegalArgumentException(
          "Expected a partition from 0 to %d of %s, but found %d"
              .formatted(partitions - 1, name, partition));
    }
    return partition;
  }
}
