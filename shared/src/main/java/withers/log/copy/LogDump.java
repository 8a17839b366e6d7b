package withers.log.copy;

import java.util.Set;
import java.util.function.Consumer;
import withers.codec.LogLines;
import withers.codec.Streams;
import withers.log.LogSnapshot;
import withers.log.LogStream;

/**
 * All that a log tells, line by line: the imports in the order of their commits; then stream by
 * stream and partition by partition the events, import by import, each as it was brought.
 *
 * @param streams those that are wanted, {@link Streams#IMPORTS} among them
 */
public record LogDump(LogSnapshot log, Set<String> streams) {
  public LogDump {
    streams = Set.copyOf(streams);
  }

  /** Hands over the lines, without line ends. */
  public void run(Consumer<String> line) {
    if (streams.contains(Streams.IMPORTS)) {
      log.markers().stream().map(LogLines::of).forEach(line);
    }
    for (LogStream<?> stream : Streams.all()) {
      for (int p = 0; p < stream.partitions() && streams.contains(stream.name()); p++) {
        dump(stream, p, line);
      }
    }
  }

  private <E> void dump(LogStream<E> stream, int partition, Consumer<String> line) {
    log.replay(
        stream,
        partition,
        (event, marker) -> line.accept(LogLines.of(stream, partition, marker.id(), event)));
  }
}
