package withers.work.kafka;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Future;
import org.apache.kafka.clients.consumer.CommitFailedException;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.OffsetAndMetadata;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.TopicPartition;
import withers.kafka.KafkaCluster;
import withers.kafka.KafkaCounts;
import withers.kafka.KafkaTroubles;
import withers.work.Task;

/**
 * One worker's place in the group: takes orders, and hands each result in together with the word
 * that its order is done, in one transaction. So each part's result stands once, whoever dies. For
 * one thread.
 */
public final class KafkaWorkplace implements AutoCloseable {
  private static final Duration POLL = Duration.ofMillis(50);

  /** A run says at once that it is there. */
  private static final Duration GREETING = Duration.ofSeconds(10);

  private final KafkaTroubles troubles;
  private final WorkTopics topics;
  private final Worker worker;
  private final Consumer<byte[], byte[]> orders;
  private final Consumer<byte[], byte[]> answers;
  private final Producer<byte[], byte[]> producer;

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
    this.troubles = KafkaCrew.troubles(cluster);
    this.topics = new WorkTopics(troubles);
    this.worker = worker;
    topics.prepare(worker.parts);
    this.orders = troubles.trying(() -> cluster.consumer(topics.group()));
    this.answers = troubles.trying(cluster::consumer);
    this.producer = troubles.trying(() -> cluster.producer(topics.group() + "." + worker.id));
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
    troubles.trying(
        () -> {
          producer.initTransactions();
          orders.subscribe(List.of(topics.orders()));
          return producer;
        });
  }

  /** The next part that is this worker's, if one comes in time. */
  public Optional<Task> next(Duration wait) {
    return troubles.trying(
        () -> {
          for (ConsumerRecord<byte[], byte[]> record : orders.poll(wait)) {
            return Optional.of(new Order(record));
          }
          return Optional.empty();
        });
  }

  @Override
  public void close() {
    troubles.trying(
        () -> {
          producer.close(Duration.ofSeconds(5));
          answers.close();
          orders.close();
          return producer;
        });
  }

  /** An order that was taken. */
  private final class Order implements Task {
    private final ConsumerRecord<byte[], byte[]> record;
    private final long since = System.nanoTime();
    private final Processor processor = new Processor();

    Order(ConsumerRecord<byte[], byte[]> record) {
      this.record = record;
    }

    @Override
    public String run() {
      return WorkRecord.text(record, WorkRecord.RUN);
    }

    @Override
    public String rules() {
      return WorkRecord.isKnown(record) ? WorkRecord.text(record, WorkRecord.RULES) : "";
    }

    @Override
    public String order() {
      return new String(record.value(), UTF_8);
    }

    @Override
    public int part() {
      return record.partition();
    }

    @Override
    public boolean isAwaited() {
      return ask(WorkRecord.HELLO, new byte[0], WorkRecord.HERE, GREETING).isPresent();
    }

    @Override
    public Optional<byte[]> ask(byte[] question) {
      return ask(WorkRecord.QUESTION, question, WorkRecord.ANSWER, worker.patience);
    }

    private Optional<byte[]> ask(String type, byte[] message, String reply, Duration patience) {
      String asked = worker.id + "-" + record.offset();
      return troubles.trying(
          () -> {
            TopicPartition partition = topics.answers(part());
            answers.assign(List.of(partition));
            answers.endOffsets(List.of(partition)).forEach(answers::seek);
            producer.beginTransaction();
            send(type, topics.questions(), Map.of(WorkRecord.ASKED, asked), message);
            producer.commitTransaction();
            return reply(reply, asked, patience);
          });
    }

    private Optional<byte[]> reply(String type, String asked, Duration patience) {
      long begun = System.nanoTime();
      Pieces pieces = new Pieces();
      while (System.nanoTime() - begun < patience.toNanos()) {
        for (ConsumerRecord<byte[], byte[]> one : answers.poll(POLL)) {
          if (WorkRecord.isOf(one, run(), type)
              && WorkRecord.text(one, WorkRecord.ASKED).equals(asked)) {
            Optional<byte[]> whole = pieces.add(one);
            if (whole.isPresent()) {
              return whole;
            }
          }
        }
      }
      return Optional.empty();
    }

    @Override
    public void deliver(byte[] result) {
      long millis = (System.nanoTime() - since) / 1_000_000;
      handIn(
          WorkRecord.RESULT,
          Map.of(
              WorkRecord.MILLIS, String.valueOf(millis),
              WorkRecord.PROCESSOR_MILLIS, String.valueOf(processor.millis())),
          result);
    }

    @Override
    public void refuse() {
      handIn(WorkRecord.REFUSAL, Map.of(), new byte[0]);
    }

    private void handIn(String type, Map<String, String> more, byte[] message) {
      inTransaction(() -> send(type, topics.results(), more, message));
    }

    @Override
    public void drop() {
      inTransaction(() -> {});
    }

    /**
     * Whoever was taken for dead, and is not, is told so here: the part is somebody else's by now.
     */
    private void inTransaction(Runnable sending) {
      troubles.trying(
          () -> {
            producer.beginTransaction();
            try {
              sending.run();
              producer.sendOffsetsToTransaction(
                  Map.of(
                      new TopicPartition(record.topic(), record.partition()),
                      new OffsetAndMetadata(record.offset() + 1)),
                  orders.groupMetadata());
              producer.commitTransaction();
            } catch (CommitFailedException elsewhere) {
              producer.abortTransaction();
              KafkaCounts.ofThisProcess().aborted();
            }
            return producer;
          });
    }

    private void send(String type, TopicPartition to, Map<String, String> more, byte[] message) {
      Map<String, String> headers = WorkRecord.headers(type, run(), part(), more);
      headers.put(WorkRecord.WORKER, worker.name);
      for (ProducerRecord<byte[], byte[]> one : Pieces.of(to, headers, message)) {
        Future<RecordMetadata> unused = producer.send(one); // the commit fails if this does
      }
    }
  }
}
