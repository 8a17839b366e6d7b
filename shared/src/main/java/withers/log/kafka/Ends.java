package withers.log.kafka;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.apache.kafka.common.TopicPartition;

/**
 * Where partitions ended when the first of their stream was read: what a snapshot shows stood on
 * the log before. Safe for several threads.
 */
final class Ends {
  private final Map<TopicPartition, Long> known = new HashMap<>();

  /**
   * The first offset of a partition that is not wanted.
   *
   * @param stream asks for the ends of its whole stream, which takes no longer than for one
   */
  synchronized long of(TopicPartition partition, Supplier<Map<TopicPartition, Long>> stream) {
    if (!known.containsKey(partition)) {
      known.putAll(stream.get());
    }
    return known.getOrDefault(partition, 0L);
  }
}
