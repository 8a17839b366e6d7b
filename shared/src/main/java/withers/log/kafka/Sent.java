package withers.log.kafka;

import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import org.apache.kafka.clients.producer.RecordMetadata;
import withers.id.ImportId;
import withers.log.Contents;

/**
 * Chunks that were handed to the producer and are not known to have arrived. One that did not
 * arrive stays, so that its import can never be committed. Safe for several threads.
 */
final class Sent {

  /** Hears of a chunk that all replicas have. */
  @FunctionalInterface
  interface Arrival {
    void of(ImportId id, Contents.Place place, int events);
  }

  private record OnItsWay(Contents.Place place, int events, Future<RecordMetadata> answer) {}

  private final Arrival arrival;
  private final Map<ImportId, Queue<OnItsWay>> byImport = new HashMap<>();

  Sent(Arrival arrival) {
    this.arrival = arrival;
  }

  synchronized void add(ImportId id, Chunk chunk, Future<RecordMetadata> answer) {
    byImport
        .computeIfAbsent(id, none -> new ArrayDeque<>())
        .add(new OnItsWay(chunk.place(), chunk.events(), answer));
  }

  /** Looks at those that have been answered, without waiting for any. */
  synchronized void look(ImportId id) throws ExecutionException, InterruptedException {
    Queue<OnItsWay> chunks = chunks(id);
    while (!chunks.isEmpty() && chunks.element().answer().isDone()) {
      take(id, chunks);
    }
  }

  /** Waits until all have arrived. */
  synchronized void await(ImportId id) throws ExecutionException, InterruptedException {
    Queue<OnItsWay> chunks = chunks(id);
    while (!chunks.isEmpty()) {
      take(id, chunks);
    }
  }

  private Queue<OnItsWay> chunks(ImportId id) {
    return byImport.getOrDefault(id, new ArrayDeque<>());
  }

  private void take(ImportId id, Queue<OnItsWay> chunks)
      throws ExecutionException, InterruptedException {
    OnItsWay first = chunks.element();
    first.answer().get();
    chunks.remove();
    arrival.of(id, first.place(), first.events());
  }

  synchronized void forget(ImportId id) {
    byImport.remove(id);
  }
}
