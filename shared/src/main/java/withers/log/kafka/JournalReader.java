package withers.log.kafka;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.OffsetSpec;
import org.apache.kafka.common.TopicPartition;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.kafka.KafkaTroubles;
import withers.log.ImportMarker;

/** Follows the topic of imports. Safe for several threads. */
final class JournalReader {
  private final KafkaTroubles troubles;
  private final Consumers consumers;
  private final TopicPartition partition;
  private final Journal journal = new Journal();
  private long position;

  JournalReader(KafkaTroubles troubles, Consumers consumers, String topic) {
    this.troubles = troubles;
    this.consumers = consumers;
    this.partition = new TopicPartition(topic, 0);
  }

  /** Reads what is committed by now. */
  synchronized void refresh() {
    position =
        consumers.with(
            consumer -> {
              long end = consumer.endOffsets(List.of(partition)).getOrDefault(partition, 0L);
              new Scan(troubles, consumer)
                  .run(
                      Map.of(partition, position),
                      Map.of(partition, end),
                      record -> {
                        journal.apply(record);
                        position = record.offset() + 1;
                        return true;
                      });
              return Math.max(position, end);
            });
  }

  /** How far it has read: to the end, or to a commit that is not decided. */
  synchronized long position() {
    return position;
  }

  /** Where the topic ends, with what is not decided. */
  long end() {
    return troubles.trying(
        () -> {
          try (Admin admin = troubles.cluster().admin()) {
            return admin
                .listOffsets(Map.of(partition, OffsetSpec.latest()))
                .partitionResult(partition)
                .get()
                .offset();
          }
        });
  }

  /**
   * Reads on until something is seen, which is on its way: Kafka acknowledges a transaction before
   * readers see it.
   */
  void await(Predicate<JournalReader> seen) {
    long since = System.nanoTime();
    refresh();
    while (!seen.test(this)) {
      if (System.nanoTime() - since > 2 * troubles.cluster().patience().toNanos()) {
        throw troubles.silent();
      }
      Pauses.little();
      refresh();
    }
  }

  synchronized List<Committed> committed() {
    return journal.committed();
  }

  synchronized boolean isCommitted(ImportId id) {
    return journal.isCommitted(id);
  }

  synchronized boolean holds(ImportMarker marker) {
    return journal.committed().stream().anyMatch(one -> one.marker().equals(marker));
  }

  synchronized Optional<ImportId> newest(SourceId chain) {
    return journal.newest(chain);
  }

  synchronized Optional<Begun> underWay(Attempt attempt) {
    return journal.underWay(attempt);
  }

  synchronized Optional<Begun> underWay(ImportId id) {
    return journal.underWay(id);
  }

  synchronized List<Begun> underWay() {
    return journal.underWay();
  }

  /** Before anything else is asked of the log's imports. */
  void requireUncommitted(ImportId id) {
    if (isCommitted(id)) {
      throw new IllegalStateException(
          "Expected an import without a marker, but import %s is committed".formatted(id));
    }
  }
}
