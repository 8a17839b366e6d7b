package withers.log.memory;

import java.util.List;
import java.util.function.Predicate;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.LogStream;

/** The imports that were committed when the snapshot was taken. */
record MemorySnapshot(List<Committed> imports) implements LogSnapshot {

  @Override
  public List<ImportMarker> markers() {
    return imports.stream().map(Committed::marker).toList();
  }

  @Override
  public <E> void replay(
      LogStream<E> stream,
      int partition,
      Predicate<ImportMarker> which,
      Handler<? super E> handler) {
    stream.requirePartition(partition);
    for (Committed one : imports) {
      if (which.test(one.marker())) {
        for (List<?> batch : one.contents().at(stream.name(), partition)) {
          handOver(batch, one.marker(), handler);
        }
      }
    }
  }

  // A stream's name stands for one type of event: what was appended under it comes back under it.
  @SuppressWarnings("unchecked")
  private static <E> void handOver(List<?> batch, ImportMarker marker, Handler<? super E> handler) {
    for (E event : (List<E>) batch) {
      handler.on(event, marker);
    }
  }
}
