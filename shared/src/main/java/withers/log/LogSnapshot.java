package withers.log;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import withers.chip.ChipNumber;
import withers.id.SourceId;

/**
 * The log as it was committed at one moment. Safe for several threads; partitions can be replayed
 * side by side.
 */
public interface LogSnapshot {

  /** Receives one event and the marker of the import that brought it. */
  @FunctionalInterface
  interface Handler<E> {
    void on(E event, ImportMarker marker);
  }

  /** All committed markers, in the order of their commits. */
  List<ImportMarker> markers();

  /**
   * Replays one partition, import by import in the order of their commits, each in the order of its
   * batches.
   *
   * @param which the imports wanted; others are passed over without decoding
   * @throws LogDamagedException when a chunk fails its checksum, naming stream, partition and place
   */
  <E> void replay(
      LogStream<E> stream,
      int partition,
      Predicate<ImportMarker> which,
      Handler<? super E> handler);

  /**
   * Replays a partition for who only listens to what is said of some chips: events about those are
   * replayed as {@link #replay} does, others may be passed over.
   *
   * @throws LogDamagedException as for {@link #replay}, but damage of what is passed over may go
   *     unnoticed
   */
  default <E> void replayAbout(
      Set<ChipNumber> chips,
      LogStream<E> stream,
      int partition,
      Predicate<ImportMarker> which,
      Handler<? super E> handler) {
    replay(stream, partition, which, handler);
  }

  default <E> void replay(LogStream<E> stream, int partition, Handler<? super E> handler) {
    replay(stream, partition, marker -> true, handler);
  }

  /** The newest committed marker of a chain. */
  default Optional<ImportMarker> newest(SourceId chain) {
    return markers().stream().filter(m -> m.chain().equals(chain)).reduce((first, last) -> last);
  }
}
