package withers.log.kafka;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.Function;
import org.apache.kafka.clients.consumer.Consumer;
import org.jspecify.annotations.Nullable;
import withers.kafka.KafkaTroubles;

/** Consumers that are free, kept because making one costs more than most reads. */
final class Consumers implements AutoCloseable {
  private final KafkaTroubles troubles;
  private final Deque<Consumer<byte[], byte[]>> free = new ArrayDeque<>();
  private boolean closed;

  Consumers(KafkaTroubles troubles) {
    this.troubles = troubles;
  }

  /** Does some reading with a consumer of its own. */
  <T> T with(Function<Consumer<byte[], byte[]>, T> reading) {
    Consumer<byte[], byte[]> consumer = take();
    try {
      return troubles.trying(() -> reading.apply(consumer));
    } finally {
      giveBack(consumer);
    }
  }

  private Consumer<byte[], byte[]> take() {
    Consumer<byte[], byte[]> one = takeFree();
    return one != null ? one : troubles.trying(troubles.cluster()::consumer);
  }

  private synchronized @Nullable Consumer<byte[], byte[]> takeFree() {
    if (closed) {
      throw new IllegalStateException("The event log is closed");
    }
    return free.poll();
  }

  private void giveBack(Consumer<byte[], byte[]> consumer) {
    consumer.unsubscribe();
    if (!keep(consumer)) {
      consumer.close();
    }
  }

  private synchronized boolean keep(Consumer<byte[], byte[]> consumer) {
    return !closed && free.add(consumer);
  }

  @Override
  public void close() {
    drain().forEach(Consumer::close);
  }

  private synchronized Iterable<Consumer<byte[], byte[]>> drain() {
    closed = true;
    Deque<Consumer<byte[], byte[]>> all = new ArrayDeque<>(free);
    free.clear();
    return all;
  }
}
