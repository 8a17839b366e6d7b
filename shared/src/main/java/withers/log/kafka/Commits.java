package withers.log.kafka;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.errors.ConcurrentTransactionsException;
import org.apache.kafka.common.errors.InvalidProducerEpochException;
import org.apache.kafka.common.errors.InvalidTxnStateException;
import org.apache.kafka.common.errors.ProducerFencedException;
import org.apache.kafka.common.errors.TransactionAbortableException;
import org.apache.kafka.common.errors.TransactionAbortedException;
import withers.kafka.KafkaCounts;
import withers.kafka.KafkaTroubles;
import withers.log.LogUnavailableException;

/**
 * Writes to the topic of imports what rests on what stands there: compare, then append, with nobody
 * between. Whoever begins shuts out everyone who began before and has not ended, so that a marker
 * is written only if nothing came since it was compared.
 */
final class Commits {
  private static final int TRIES = 20;
  private static final int STEP_MILLIS = 13;
  private static final Duration CLOSING = Duration.ofSeconds(5);

  private final KafkaTroubles troubles;
  private final String transactionalId;

  Commits(KafkaTroubles troubles) {
    this.troubles = troubles;
    this.transactionalId = troubles.cluster().settings().topic("commit");
  }

  /**
   * @param decision reads the topic anew and says what to append, or throws; nothing when an
   *     earlier try, whose answer was lost, has done it. Asked again when another program was
   *     faster, with the number of the try, from 1
   * @param turn spreads programs that hinder each other: waits grow differently for each
   */
  void append(int turn, IntFunction<Optional<ProducerRecord<byte[], byte[]>>> decision) {
    for (int number = 1; number <= TRIES; number++) {
      int current = number;
      if (troubles.trying(() -> appended(() -> decision.apply(current)))) {
        return;
      }
      Pauses.millis((long) STEP_MILLIS * number * (1 + Math.floorMod(turn, 5)));
    }
    throw new LogUnavailableException(
        "Other programs keep committing to the event log on Kafka under %s; repeat later"
            .formatted(troubles.cluster().settings().topicPrefix()));
  }

  private boolean appended(Supplier<Optional<ProducerRecord<byte[], byte[]>>> decision)
      throws ExecutionException, InterruptedException {
    Producer<byte[], byte[]> producer = troubles.cluster().producer(transactionalId);
    try {
      producer.initTransactions();
      Optional<ProducerRecord<byte[], byte[]>> record = decision.get();
      if (record.isPresent()) {
        producer.beginTransaction();
        Future<RecordMetadata> sent = producer.send(record.get());
        producer.commitTransaction();
        sent.get();
      }
      return true;
    } catch (KafkaException | ExecutionException e) {
      if (isShutOut(e)) {
        KafkaCounts.ofThisProcess().aborted();
        return false;
      }
      if (isWithoutAName(e)) {
        return false;
      }
      throw e;
    } finally {
      producer.close(CLOSING); // one that has no broker to end its transaction with never ends
    }
  }

  // A broker that is asked to end a transaction while somebody else shuts it out has been seen to
  // answer that something unexpected happened, which the client passes on as no particular error.
  private static boolean isWithoutAName(Exception thrown) {
    return thrown.getClass().equals(KafkaException.class) && thrown.getCause() == null;
  }

  // What a client is told depends on how far it had come. To try again is safe whatever happened:
  // the topic is read anew, and shows what an earlier try did after all.
  private static boolean isShutOut(Throwable thrown) {
    for (Throwable cause = thrown; cause != null; cause = cause.getCause()) {
      if (cause instanceof ProducerFencedException
          || cause instanceof InvalidProducerEpochException
          || cause instanceof InvalidTxnStateException
          || cause instanceof TransactionAbortableException
          || cause instanceof TransactionAbortedException
          || cause instanceof ConcurrentTransactionsException) {
        return true;
      }
    }
    return false;
  }
}
