package withers.work.kafka;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import withers.kafka.KafkaCluster;
import withers.kafka.KafkaTroubles;
import withers.work.Task;

/**
 * One worker's place in the group: takes orders, and hands each result in together with the word
 * that its order is done, in one transaction. So each part's result stands once, whoever dies. For
 * one thread.
 */
public final class KafkaWorkplace implements AutoCloseable {
  private final Order.Desk desk;

  /**
   * Who works.
   *
   * @param name of the machine, and which worker there; for people
   * @param id of this worker alone
   * @param parts of every work
   * @param patience how long to wait for an answer before the run is taken for dead
   */
  public record Worker(String name, UUID id, int parts, Duration patience) {}

  private KafkaWorkplace(KafkaCluster cluster, Worker worker) {
    KafkaTroubles troubles = KafkaCrew.troubles(cluster);
    WorkTopics topics = new WorkTopics(troubles);
    topics.prepare(worker.parts);
    this.desk =
        new Order.Desk(
            troubles,
            topics,
            worker,
            troubles.trying(() -> cluster.consumer(topics.group())),
            troubles.trying(cluster::consumer),
            troubles.trying(() -> cluster.producer(topics.group() + "." + worker.id)));
  }

  /**
   * Joins the group.
   *
   * @throws withers.log.LogUnavailableException when no broker answers in time or it refuses
   */
  public static KafkaWorkplace open(KafkaCluster cluster, Worker worker) {
    KafkaWorkplace place = new KafkaWorkplace(cluster, worker);
    try {
      place.join();
      return place;
    } catch (RuntimeException e) {
      place.close();
      throw e;
    }
  }

  private void join() {
    desk.troubles()
        .trying(
            () -> {
              desk.producer().initTransactions();
              desk.orders().subscribe(List.of(desk.topics().orders()));
              return desk;
            });
  }

  /** The next part that is this worker's, if one comes in time. */
  public Optional<Task> next(Duration wait) {
    return desk.troubles()
        .trying(
            () -> {
              for (ConsumerRecord<byte[], byte[]> record : desk.orders().poll(wait)) {
                return Optional.of(new Order(desk, record));
              }
              return Optional.empty();
            });
  }

  @Override
  public void close() {
    desk.troubles()
        .trying(
            () -> {
              desk.producer().close(Duration.ofSeconds(5));
              desk.answers().close();
              desk.orders().close();
              return desk;
            });
  }
}
