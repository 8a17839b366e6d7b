package withers.work.kafka;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerRecord;
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
  private static final Duration POLL = Duration.ofMillis(100);

  /** Twice what it takes until the parts of one who died are another's, and that one's first. */
  private static final Duration SILENCE = Duration.ofSeconds(60);

  /** When all who came have refused, others who are there would have spoken by then. */
  private static final Duration REFUSED = Duration.ofSeconds(5);

  private final KafkaTroubles troubles;
  private final WorkTopics topics;
  private final Ordered ordered;
  private final Map<String, Share> shares = new TreeMap<>();
  private final List<String> notes = new ArrayList<>();

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
            new Listening(consumer, producer, pool, desk).until(parts);
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
    return List.copyOf(shares.values());
  }

  @Override
  public List<String> notes() {
    return List.copyOf(notes);
  }

  /** Hears questions and results, and has them seen to by the pool. */
  private final class Listening {
    private final Consumer<byte[], byte[]> consumer;
    private final Producer<byte[], byte[]> producer;
    private final ExecutorService pool;
    private final Desk desk;
    private final Pieces pieces = new Pieces();
    private final Set<Integer> done = new HashSet<>();
    private final Set<String> refusing = new TreeSet<>();
    private final List<Future<?>> seenTo = new ArrayList<>();
    private long heard = System.nanoTime();
    private final Set<String> working = new HashSet<>();
    private boolean anybody;

    Listening(
        Consumer<byte[], byte[]> consumer,
        Producer<byte[], byte[]> producer,
        ExecutorService pool,
        Desk desk) {
      this.consumer = consumer;
      this.producer = producer;
      this.pool = pool;
      this.desk = desk;
    }

    void until(int parts) throws ExecutionException, InterruptedException {
      while (done.size() < parts && !isSilent()) {
        for (ConsumerRecord<byte[], byte[]> record : consumer.poll(POLL)) {
          hear(record);
        }
        finish(false);
      }
      finish(true);
      note();
    }

    private void hear(ConsumerRecord<byte[], byte[]> record) {
      if (!WorkRecord.text(record, WorkRecord.RUN).equals(ordered.run)) {
        return;
      }
      if (!WorkRecord.isKnown(record)) {
        throw WorkRecord.unknown(record);
      }
      anybody = true;
      working.add(WorkRecord.text(record, WorkRecord.WORKER));
      heard = System.nanoTime();
      pieces.add(record).ifPresent(message -> hear(record, message));
    }

    private void hear(ConsumerRecord<byte[], byte[]> record, byte[] message) {
      int part = WorkRecord.number(record, WorkRecord.PART);
      switch (WorkRecord.text(record, WorkRecord.TYPE)) {
        case WorkRecord.HELLO -> reply(WorkRecord.HERE, record, part, message);
        case WorkRecord.QUESTION -> seenTo.add(pool.submit(() -> answer(record, part, message)));
        case WorkRecord.RESULT -> take(record, part, message);
        default -> refused(record, part);
      }
    }

    private void answer(ConsumerRecord<byte[], byte[]> record, int part, byte[] question) {
      reply(WorkRecord.ANSWER, record, part, desk.answer(question));
    }

    private void reply(
        String type, ConsumerRecord<byte[], byte[]> record, int part, byte[] message) {
      Map<String, String> headers =
          WorkRecord.headers(
              type,
              ordered.run,
              part,
              Map.of(WorkRecord.ASKED, WorkRecord.text(record, WorkRecord.ASKED)));
      troubles.trying(
          () -> {
            for (ProducerRecord<byte[], byte[]> one :
                Pieces.of(topics.answers(part), headers, message)) {
              producer.send(one).get();
            }
            return producer;
          });
    }

    private void take(ConsumerRecord<byte[], byte[]> record, int part, byte[] result) {
      if (done.add(part)) {
        String worker = WorkRecord.text(record, WorkRecord.WORKER);
        long millis = WorkRecord.number(record, WorkRecord.MILLIS);
        long processor = WorkRecord.number(record, WorkRecord.PROCESSOR_MILLIS);
        shares.merge(
            worker,
            new Share(worker, 1, millis, processor),
            (all, one) -> all.plus(millis, processor));
        seenTo.add(pool.submit(() -> desk.done(part, result)));
      }
    }

    private void refused(ConsumerRecord<byte[], byte[]> record, int part) {
      done.add(part);
      refusing.add(WorkRecord.text(record, WorkRecord.WORKER));
      working.removeAll(refusing);
    }

    /** Looks after what the pool has done, or waits for all of it. */
    private void finish(boolean wait) throws ExecutionException, InterruptedException {
      Iterator<Future<?>> all = seenTo.iterator();
      while (all.hasNext()) {
        Future<?> one = all.next();
        if (wait || one.isDone()) {
          get(one);
          all.remove();
          heard = System.nanoTime();
        }
      }
    }

    private void get(Future<?> one) throws ExecutionException, InterruptedException {
      try {
        one.get();
      } catch (ExecutionException e) {
        if (e.getCause() instanceof RuntimeException thrown) {
          throw thrown;
        }
        throw e;
      }
    }

    private boolean isSilent() {
      Duration longest = working.isEmpty() ? (anybody ? REFUSED : ordered.patience) : SILENCE;
      return seenTo.isEmpty() && System.nanoTime() - heard > longest.toNanos();
    }

    private void note() {
      if (!anybody) {
        notes.add(
            "No worker was heard of within %d s: the run was done here alone. Start some with \"withers work\""
                .formatted(ordered.patience.toSeconds()));
      }
      refusing.forEach(
          worker ->
              notes.add(
                  "The worker %s has other rules or another configuration, and left: give it this Withers, and this workspace's organisations.yaml and withers.yaml"
                      .formatted(worker)));
    }
  }
}
