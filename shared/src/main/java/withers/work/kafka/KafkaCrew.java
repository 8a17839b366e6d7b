package withers.work.kafka;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.TopicPartition;
import withers.kafka.KafkaCluster;
import withers.kafka.KafkaTroubles;
import withers.log.LogDamagedException;
import withers.log.LogUnavailableException;
import withers.work.Crew;

/**
 * Orders work from whoever is in the group of workers. Each part is a record of the topic of
 * orders; who gets it, and who gets it when that one dies, Kafka says. For one work at a time.
 */
public final class KafkaCrew implements Crew {
  private final KafkaTroubles troubles;
  private final WorkTopics topics;
  private final Ordered ordered;
  private List<Share> shares = List.of();
  private List<String> notes = List.of();

  /**
   * What is ordered.
   *
   * @param run names the work, and no other
   * @param rules what the workers' rules and configuration must be
   * @param threads how many questions are answered at a time
   * @param patience how long to wait for the first word of a worker
   */
  public record Ordered(String run, String rules, int threads, Duration patience) {}

  public KafkaCrew(KafkaCluster cluster, Ordered ordered) {
    this.troubles = troubles(cluster);
    this.topics = new WorkTopics(troubles);
    this.ordered = ordered;
  }

  static KafkaTroubles troubles(KafkaCluster cluster) {
    return new KafkaTroubles(
        "shared work", cluster, LogUnavailableException::new, LogDamagedException::new);
  }

  @Override
  public void work(String order, int parts, Desk desk) {
    topics.prepare(parts);
    ExecutorService pool = Executors.newFixedThreadPool(ordered.threads);
    troubles.trying(
        () -> {
          try (Consumer<byte[], byte[]> consumer = troubles.cluster().consumer();
              Producer<byte[], byte[]> producer = troubles.cluster().producer()) {
            goToTheEnd(consumer);
            place(order, parts, producer);
            Hearing hearing = new Hearing(troubles, topics, ordered, producer, pool, desk);
            hearing.until(parts, consumer);
            shares = hearing.shares();
            notes = hearing.notes();
            return desk;
          } finally {
            pool.shutdownNow();
          }
        });
  }

  private void goToTheEnd(Consumer<byte[], byte[]> consumer) {
    List<TopicPartition> both = List.of(topics.questions(), topics.results());
    consumer.assign(both);
    consumer.endOffsets(both).forEach(consumer::seek);
  }

  private void place(String order, int parts, Producer<byte[], byte[]> producer)
      throws ExecutionException, InterruptedException {
    List<Future<?>> sent = new ArrayList<>();
    for (int part = 0; part < parts; part++) {
      Map<String, String> headers =
          WorkRecord.headers(
              WorkRecord.ORDER, ordered.run, part, Map.of(WorkRecord.RULES, ordered.rules));
      TopicPartition to = new TopicPartition(topics.orders(), part);
      for (ProducerRecord<byte[], byte[]> record : Pieces.of(to, headers, order.getBytes(UTF_8))) {
        sent.add(producer.send(record));
      }
    }
    for (Future<?> one : sent) {
      one.get();
    }
  }

  @Override
  public List<Share> shares() {
    return shares;
  }

  @Override
  public List<String> notes() {
    return notes;
  }
}
