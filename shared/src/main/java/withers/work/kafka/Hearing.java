package withers.work.kafka;

import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerRecord;
import withers.kafka.KafkaTroubles;
import withers.work.Crew.Desk;
import withers.work.Crew.Share;

/** Hears questions and results of one work, and has them seen to by a pool. For one thread. */
final class Hearing {
  private static final Duration POLL = Duration.ofMillis(100);

  private final KafkaTroubles troubles;
  private final WorkTopics topics;
  private final String run;
  private final Producer<byte[], byte[]> producer;
  private final Desk desk;
  private final Attendance attendance;
  private final SeenTo seenTo;
  private final Pieces pieces = new Pieces();
  private final Set<Integer> done = new HashSet<>();

  Hearing(
      KafkaTroubles troubles,
      WorkTopics topics,
      KafkaCrew.Ordered ordered,
      Producer<byte[], byte[]> producer,
      ExecutorService pool,
      Desk desk) {
    this.troubles = troubles;
    this.topics = topics;
    this.run = ordered.run();
    this.producer = producer;
    this.desk = desk;
    this.attendance = new Attendance(ordered.patience());
    this.seenTo = new SeenTo(pool);
  }

  /** Until all parts are judged or left, or nobody says a word. */
  void until(int parts, Consumer<byte[], byte[]> consumer)
      throws ExecutionException, InterruptedException {
    while (done.size() < parts && !(seenTo.isEmpty() && attendance.isSilent())) {
      consumer.poll(POLL).forEach(this::hear);
      if (seenTo.look()) {
        attendance.goesOn();
      }
    }
    seenTo.await();
  }

  /** Who did how much, in the order of their names. */
  List<Share> shares() {
    return attendance.shares();
  }

  /** What whoever ordered the work should know. */
  List<String> notes() {
    return attendance.notes();
  }

  private void hear(ConsumerRecord<byte[], byte[]> record) {
    if (!WorkRecord.text(record, WorkRecord.RUN).equals(run)) {
      return;
    }
    if (!WorkRecord.isKnown(record)) {
      throw WorkRecord.unknown(record);
    }
    attendance.heard(WorkRecord.text(record, WorkRecord.WORKER));
    pieces.add(record).ifPresent(message -> hear(record, message));
  }

  private void hear(ConsumerRecord<byte[], byte[]> record, byte[] message) {
    int part = WorkRecord.number(record, WorkRecord.PART);
    switch (WorkRecord.text(record, WorkRecord.TYPE)) {
      case WorkRecord.HELLO -> reply(WorkRecord.HERE, record, part, message);
      case WorkRecord.QUESTION -> seenTo.add(() -> answer(record, part, message));
      case WorkRecord.RESULT -> take(record, part, message);
      default -> {
        done.add(part);
        attendance.refused(WorkRecord.text(record, WorkRecord.WORKER));
      }
    }
  }

  private void answer(ConsumerRecord<byte[], byte[]> record, int part, byte[] question) {
    reply(WorkRecord.ANSWER, record, part, desk.answer(question));
  }

  private void reply(String type, ConsumerRecord<byte[], byte[]> record, int part, byte[] message) {
    Map<String, String> asked = Map.of(WorkRecord.ASKED, WorkRecord.text(record, WorkRecord.ASKED));
    Map<String, String> headers = WorkRecord.headers(type, run, part, asked);
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
      attendance.delivered(
          new Share(
              WorkRecord.text(record, WorkRecord.WORKER),
              1,
              WorkRecord.number(record, WorkRecord.MILLIS),
              WorkRecord.number(record, WorkRecord.PROCESSOR_MILLIS)));
      seenTo.add(() -> desk.done(part, result));
    }
  }
}
