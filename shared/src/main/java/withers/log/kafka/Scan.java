package withers.log.kafka;

import java.time.Duration;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.common.TopicPartition;
import withers.kafka.KafkaCounts;
import withers.kafka.KafkaTroubles;

/**
 * Reads partitions from one offset to another. It ends by the consumer's position: transactions
 * leave offsets without a record, so neither counts nor the last record's offset would do.
 */
final class Scan {
  private static final Duration POLL = Duration.ofMillis(500);

  private final KafkaTroubles troubles;
  private final Consumer<byte[], byte[]> consumer;

  Scan(KafkaTroubles troubles, Consumer<byte[], byte[]> consumer) {
    this.troubles = troubles;
    this.consumer = consumer;
  }

  /**
   * Hands over the records, those of one partition in their order.
   *
   * @param from the first offset wanted of each partition
   * @param to the first offset not wanted
   * @param each says whether it wants more
   */
  void run(
      Map<TopicPartition, Long> from,
      Map<TopicPartition, Long> to,
      Predicate<ConsumerRecord<byte[], byte[]>> each) {
    Map<TopicPartition, Long> ends = new HashMap<>(to);
    ends.keySet().retainAll(from.keySet());
    ends.entrySet().removeIf(end -> from.getOrDefault(end.getKey(), 0L) >= end.getValue());
    Set<TopicPartition> pending = new HashSet<>(ends.keySet());
    consumer.assign(pending);
    pending.forEach(partition -> consumer.seek(partition, from.getOrDefault(partition, 0L)));
    Waiting waiting = new Waiting();
    try (Lag lag = new Lag()) {
      lag.show(left(pending, ends));
      while (!pending.isEmpty() && poll(ends, each)) {
        waiting.positions(pending);
        finish(pending, ends);
        lag.show(left(pending, ends));
      }
    }
  }

  private long left(Set<TopicPartition> pending, Map<TopicPartition, Long> ends) {
    return pending.stream()
        .mapToLong(one -> ends.getOrDefault(one, 0L) - consumer.position(one))
        .sum();
  }

  /** How much is left to read, as others see it while this reads. */
  private static final class Lag implements AutoCloseable {
    private long shown;

    void show(long left) {
      KafkaCounts.ofThisProcess().behind(left - shown);
      shown = left;
    }

    @Override
    public void close() {
      show(0);
    }
  }

  private boolean poll(
      Map<TopicPartition, Long> ends, Predicate<ConsumerRecord<byte[], byte[]>> each) {
    for (ConsumerRecord<byte[], byte[]> record : consumer.poll(POLL)) {
      TopicPartition partition = new TopicPartition(record.topic(), record.partition());
      if (record.offset() < ends.getOrDefault(partition, 0L) && !each.test(record)) {
        return false;
      }
    }
    return true;
  }

  private void finish(Set<TopicPartition> pending, Map<TopicPartition, Long> ends) {
    Set<TopicPartition> done = new HashSet<>(pending);
    done.removeIf(partition -> consumer.position(partition) < ends.getOrDefault(partition, 0L));
    consumer.pause(done);
    pending.removeAll(done);
  }

  /** Gives up when nothing has moved for as long as one waits for a broker. */
  private final class Waiting {
    private long sum = -1;
    private long since = System.nanoTime();

    void positions(Set<TopicPartition> pending) {
      long now = 0;
      for (TopicPartition partition : pending) {
        now += consumer.position(partition);
      }
      if (now != sum) {
        sum = now;
        since = System.nanoTime();
      } else if (System.nanoTime() - since > troubles.cluster().patience().toNanos()) {
        throw troubles.silent();
      }
    }
  }
}
