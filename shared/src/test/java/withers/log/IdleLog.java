package withers.log;

import java.util.List;
import java.util.function.Predicate;

/** A log that does nothing at all. */
final class IdleLog implements EventLog {

  @Override
  public <E> void append(Batch<E> batch) {}

  @Override
  public void commit(ImportMarker marker) {}

  @Override
  public LogSnapshot snapshot() {
    return new LogSnapshot() {
      @Override
      public List<ImportMarker> markers() {
        return List.of();
      }

      @Override
      public <E> void replay(
          LogStream<E> stream,
          int partition,
          Predicate<ImportMarker> which,
          Handler<? super E> handler) {}
    };
  }

  @Override
  public long sweep() {
    return 0;
  }

  @Override
  public void close() {}
}
