package withers.log.memory;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.id.ImportId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.StaleParentException;

/** Holds the events themselves, never their bytes. All is lost when the program ends. */
public final class MemoryEventLog implements EventLog {

  private final Map<ImportId, Contents> open = new HashMap<>();
  private final List<Committed> committed = new ArrayList<>();
  private boolean closed;

  @Override
  public synchronized <E> void append(Batch<E> batch) {
    requireOpen();
    requireUncommitted(batch.importId());
    open.computeIfAbsent(batch.importId(), id -> new Contents()).add(batch);
  }

  @Override
  public synchronized void commit(ImportMarker marker) {
    requireOpen();
    requireUncommitted(marker.id());
    Optional<ImportId> newest = snapshot().newest(marker.chain()).map(ImportMarker::id);
    if (!newest.equals(marker.parent())) {
      throw new StaleParentException(marker.chain());
    }
    Contents contents = open.remove(marker.id());
    committed.add(new Committed(marker, contents == null ? new Contents() : contents));
  }

  @Override
  public synchronized LogSnapshot snapshot() {
    requireOpen();
    return new MemorySnapshot(List.copyOf(committed));
  }

  @Override
  public synchronized long sweep() {
    requireOpen();
    long batches = open.values().stream().mapToLong(Contents::size).sum();
    open.clear();
    return batches;
  }

  @Override
  public synchronized void close() {
    closed = true;
  }

  private void requireOpen() {
    if (closed) {
      throw new IllegalStateException("The event log is closed");
    }
  }

  private void requireUncommitted(ImportId id) {
    if (committed.stream().anyMatch(one -> one.marker().id().equals(id))) {
      throw new IllegalStateException(
          "Expected an import without a marker, but import %s is committed".formatted(id));
    }
  }
}
