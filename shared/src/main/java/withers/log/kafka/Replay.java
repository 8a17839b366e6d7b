package withers.log.kafka;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import withers.log.Contents;
import withers.log.LogDamagedException;
import withers.log.LogSnapshot.Handler;
import withers.log.LogStream;

/**
 * Hands over the events of one place, import by import in the order of their commits. Chunks of an
 * import whose turn has not come wait as bytes: few, because imports seldom overlap.
 */
final class Replay<E> {

  /** An import that is wanted, and what came of it. */
  private static final class Wanted {
    final Committed committed;
    final Contents.Count expected;
    final List<ConsumerRecord<byte[], byte[]>> waiting = new ArrayList<>();
    Contents.Count seen = Contents.Count.NONE;
    long last = -1;

    Wanted(Committed committed, Contents.Count expected) {
      this.committed = committed;
      this.expected = expected;
    }

    /** A chunk that was sent twice, because its answer was lost, counts once. */
    boolean isNew(ConsumerRecord<byte[], byte[]> record) {
      long order = Chunk.order(record);
      boolean isNew = order > last;
      last = Math.max(last, order);
      return isNew && !isWhole();
    }

    boolean isWhole() {
      return seen.chunks() >= expected.chunks();
    }
  }

  private final LogStream<E> stream;
  private final Contents.Place place;
  private final Handler<? super E> handler;
  private final List<Wanted> wanted = new ArrayList<>();
  private final Map<Attempt, Wanted> byAttempt = new HashMap<>();
  private int turn;

  Replay(
      LogStream<E> stream,
      Contents.Place place,
      List<Committed> imports,
      Handler<? super E> handler) {
    this.stream = stream;
    this.place = place;
    this.handler = handler;
    for (Committed one : imports) {
      Contents.Count expected = one.contents().at(place.stream(), place.partition());
      if (expected.chunks() > 0) {
        Wanted next = new Wanted(one, expected);
        wanted.add(next);
        byAttempt.put(one.attempt(), next);
      }
    }
  }

  boolean isDone() {
    return turn == wanted.size();
  }

  /** Takes the place's next record, and says whether more are wanted. */
  boolean on(ConsumerRecord<byte[], byte[]> record) {
    Wanted one = byAttempt.get(LogHeaders.attempt(record));
    if (one != null && one.isNew(record)) {
      one.seen = one.seen.plus(LogHeaders.number(record, LogHeaders.EVENTS));
      if (one == wanted.get(turn)) {
        handOver(record, one);
      } else {
        one.waiting.add(record);
      }
      goOn();
    }
    return !isDone();
  }

  private void goOn() {
    while (!isDone() && wanted.get(turn).isWhole()) {
      turn++;
      if (!isDone()) {
        Wanted next = wanted.get(turn);
        next.waiting.forEach(record -> handOver(record, next));
        next.waiting.clear();
      }
    }
  }

  private void handOver(ConsumerRecord<byte[], byte[]> record, Wanted one) {
    try {
      stream.codec().decode(record.value(), event -> handler.on(event, one.committed.marker()));
    } catch (LogDamagedException e) {
      throw new LogDamagedException(LogHeaders.place(record) + ": " + e.getMessage(), e);
    }
  }

  /**
   * @throws LogDamagedException when chunks of an import are missing
   */
  void requireAll() {
    for (Wanted one : wanted) {
      if (!one.seen.equals(one.expected)) {
        throw new LogDamagedException(
            "Event log, stream %s, partition %d, import %s: expected %d chunks of %d events, but found %d of %d; restore the topic"
                .formatted(
                    place.stream(),
                    place.partition(),
                    one.committed.marker().id(),
                    one.expected.chunks(),
                    one.expected.events(),
                    one.seen.chunks(),
                    one.seen.events()));
      }
    }
  }
}
