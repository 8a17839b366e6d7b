package withers.work.kafka;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Future;
import org.apache.kafka.clients.consumer.CommitFailedException;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.OffsetAndMetadata;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.TopicPartition;
import withers.kafka.KafkaCounts;
import withers.kafka.KafkaTroubles;
import withers.work.Task;

/** An order that was taken. */
final class Order implements Task {
  private static final Duration POLL = Duration.ofMillis(50);

  /** A run says at once that it is there. */
  private static final Duration GREETING = Duration.ofSeconds(10);

  /**
   * What a worker's orders are done with.
   *
   * @param orders consumer of the worker's group
   * @param answers consumer that is assigned anew for each question
   */
  record Desk(
      KafkaTroubles troubles,
      WorkTopics topics,
      KafkaWorkplace.Worker worker,
      Consumer<byte[], byte[]> orders,
      Consumer<byte[], byte[]> answers,
      Producer<byte[], byte[]> producer) {}

  private final Desk desk;
  private final ConsumerRecord<byte[], byte[]> record;
  private final long since = System.nanoTime();
  private final Processor processor = new Processor();

  Order(Desk desk, ConsumerRecord<byte[], byte[]> record) {
    this.desk = desk;
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
    return ask(WorkRecord.QUESTION, question, WorkRecord.ANSWER, desk.worker().patience());
  }

  private Optional<byte[]> ask(String type, byte[] message, String reply, Duration patience) {
    String asked = desk.worker().id() + "-" + record.offset();
    return desk.troubles()
        .trying(
            () -> {
              TopicPartition partition = desk.topics().answers(part());
              desk.answers().assign(List.of(partition));
              desk.answers().endOffsets(List.of(partition)).forEach(desk.answers()::seek);
              desk.producer().beginTransaction();
              send(type, desk.topics().questions(), Map.of(WorkRecord.ASKED, asked), message);
              desk.producer().commitTransaction();
              return reply(reply, asked, patience);
            });
  }

  private Optional<byte[]> reply(String type, String asked, Duration patience) {
    long begun = System.nanoTime();
    Pieces pieces = new Pieces();
    while (System.nanoTime() - begun < patience.toNanos()) {
      for (ConsumerRecord<byte[], byte[]> one : desk.answers().poll(POLL)) {
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
    inTransaction(() -> send(type, desk.topics().results(), more, message));
  }

  @Override
  public void drop() {
    inTransaction(() -> {});
  }

  /**
   * Whoever was taken for dead, and is not, is told so here: the part is somebody else's by now. So
   * is whoever takes an order while the group is being divided anew, though the part may well stay
   * here: then it comes again.
   */
  private void inTransaction(Runnable sending) {
    desk.troubles()
        .trying(
            () -> {
              desk.producer().beginTransaction();
              try {
                sending.run();
                desk.producer()
                    .sendOffsetsToTransaction(
                        Map.of(partition(), new OffsetAndMetadata(record.offset() + 1)),
                        desk.orders().groupMetadata());
                desk.producer().commitTransaction();
              } catch (CommitFailedException elsewhere) {
                desk.producer().abortTransaction();
                KafkaCounts.ofThisProcess().aborted();
                takeAgain();
              }
              return record;
            });
  }

  /** Of a partition that stays here, the group's end is not asked again: the reader goes on. */
  private void takeAgain() {
    if (desk.orders().assignment().contains(partition())) {
      desk.orders().seek(partition(), record.offset());
    }
  }

  private TopicPartition partition() {
    return new TopicPartition(record.topic(), record.partition());
  }

  private void send(String type, TopicPartition to, Map<String, String> more, byte[] message) {
    Map<String, String> headers = WorkRecord.headers(type, run(), part(), more);
    headers.put(WorkRecord.WORKER, desk.worker().name());
    for (ProducerRecord<byte[], byte[]> one : Pieces.of(to, headers, message)) {
      Future<RecordMetadata> unused = desk.producer().send(one); // the commit fails if this does
    }
  }
}
