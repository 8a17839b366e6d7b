package withers.log.kafka;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.common.TopicPartition;
import withers.kafka.KafkaTroubles;
import withers.log.Contents;

/** Looks through the chunks of attempts that have no marker. */
final class ChunkScan {
  private final KafkaTroubles troubles;
  private final Consumers consumers;
  private final LogTopics topics;

  ChunkScan(KafkaTroubles troubles, Consumers consumers, LogTopics topics) {
    this.troubles = troubles;
    this.consumers = consumers;
    this.topics = topics;
  }

  /** Where every place ends now; those that are empty are left out. */
  Map<Contents.Place, Long> ends() {
    Map<Contents.Place, TopicPartition> all = topics.all();
    Map<TopicPartition, Long> ends = consumers.with(consumer -> consumer.endOffsets(all.values()));
    Map<Contents.Place, Long> byPlace = new HashMap<>();
    all.forEach(
        (place, partition) -> {
          long end = ends.getOrDefault(partition, 0L);
          if (end > 0) {
            byPlace.put(place, end);
          }
        });
    return byPlace;
  }

  /** How many batches of these attempts are on the log. */
  long batches(Collection<Begun> attempts) {
    record Found(Attempt attempt, Contents.Place place, long batch) {}
    Set<Found> found = new HashSet<>();
    scan(
        attempts,
        (place, record) ->
            found.add(
                new Found(
                    LogHeaders.attempt(record),
                    place,
                    LogHeaders.number(record, LogHeaders.BATCH))));
    return found.size();
  }

  /** What an attempt has brought so far. */
  Contents contents(Begun attempt) {
    Map<Contents.Place, Contents.Count> counts = new HashMap<>();
    Map<Contents.Place, Long> last = new HashMap<>();
    scan(
        Set.of(attempt),
        (place, record) -> {
          long order = Chunk.order(record);
          if (order > last.getOrDefault(place, -1L)) {
            last.put(place, order);
            long events = LogHeaders.number(record, LogHeaders.EVENTS);
            counts.merge(place, Contents.Count.NONE.plus(events), (a, b) -> a.plus(events));
          }
        });
    return new Contents(counts);
  }

  private void scan(
      Collection<Begun> attempts, BiConsumer<Contents.Place, ConsumerRecord<byte[], byte[]>> each) {
    Set<Attempt> wanted = attempts.stream().map(Begun::attempt).collect(Collectors.toSet());
    Map<TopicPartition, Contents.Place> places = new HashMap<>();
    Map<TopicPartition, Long> from = new HashMap<>();
    topics
        .all()
        .forEach(
            (place, partition) -> {
              places.put(partition, place);
              from.put(
                  partition, attempts.stream().mapToLong(one -> one.from(place)).min().orElse(0));
            });
    consumers.with(
        consumer -> {
          Map<TopicPartition, Long> to = consumer.endOffsets(places.keySet());
          new Scan(troubles, consumer)
              .run(
                  from,
                  to,
                  record -> {
                    if (wanted.contains(LogHeaders.attempt(record))) {
                      each.accept(
                          places.get(new TopicPartition(record.topic(), record.partition())),
                          record);
                    }
                    return true;
                  });
          return places;
        });
  }
}
