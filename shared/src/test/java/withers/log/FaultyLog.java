package withers.log;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import withers.chip.ChipNumber;
import withers.id.ImportId;

/** A plain log with one fault, or none, for testing the contract suite itself. */
final class FaultyLog implements EventLog {

  /** What is wrong with a log. */
  enum Fault {
    NONE,
    LOSES_THE_LAST_EVENT,
    LOSES_LARGE_BATCHES,
    DUPLICATES_BATCHES,
    TURNS_BATCHES_ROUND,
    REVEALS_EARLY,
    ORDERS_BY_APPEND,
    IGNORES_PARENTS,
    CHECKS_THE_PARENT_IN_ANY_CHAIN,
    LIVE_SNAPSHOTS,
    SWEEPS_NOTHING,
    SWEEPS_EVERYTHING,
    IGNORES_THE_SELECTION,
    PASSES_OVER_TOO_MUCH,
    TAKES_LATE_BATCHES,
    MIXES_STREAMS,
    WORKS_WHEN_CLOSED
  }

  private final Fault fault;
  private final List<Batch<?>> batches = new ArrayList<>();
  private final List<ImportMarker> markers = new ArrayList<>();
  private boolean closed;

  FaultyLog(Fault fault) {
    this.fault = fault;
  }

  @Override
  public synchronized <E> void append(Batch<E> batch) {
    requireOpen();
    if (fault != Fault.TAKES_LATE_BATCHES) {
      requireUncommitted(batch.importId());
    }
    batches.add(
        new Batch<>(
            batch.stream(),
            batch.partition(),
            batch.importId(),
            batch.sequence(),
            tampered(batch.events())));
  }

  private <E> List<E> tampered(List<E> events) {
    List<E> changed = new ArrayList<>(events);
    if (fault == Fault.LOSES_THE_LAST_EVENT && !events.isEmpty()) {
      changed.remove(changed.size() - 1);
    } else if (fault == Fault.LOSES_LARGE_BATCHES && events.size() > 1000) {
      changed.subList(1000, changed.size()).clear();
    } else if (fault == Fault.DUPLICATES_BATCHES) {
      changed.addAll(events);
    } else if (fault == Fault.TURNS_BATCHES_ROUND) {
      Collections.reverse(changed);
    }
    return changed;
  }

  @Override
  public synchronized void commit(ImportMarker marker) {
    requireOpen();
    requireUncommitted(marker.id());
    if (fault != Fault.IGNORES_PARENTS && !marker.parent().equals(newest(marker))) {
      throw new StaleParentException(marker.chain());
    }
    markers.add(marker);
  }

  private Optional<ImportId> newest(ImportMarker next) {
    boolean any = fault == Fault.CHECKS_THE_PARENT_IN_ANY_CHAIN && next.parent().isPresent();
    return markers.stream()
        .filter(marker -> any || marker.chain().equals(next.chain()))
        .reduce((first, last) -> last)
        .map(ImportMarker::id);
  }

  @Override
  public synchronized LogSnapshot snapshot() {
    requireOpen();
    boolean live = fault == Fault.LIVE_SNAPSHOTS;
    return live
        ? new Snapshot(markers, batches)
        : new Snapshot(List.copyOf(markers), List.copyOf(batches));
  }

  @Override
  public synchronized long sweep() {
    requireOpen();
    List<Batch<?>> leftOver = batches.stream().filter(b -> !isCommitted(b)).toList();
    if (fault == Fault.SWEEPS_EVERYTHING) {
      batches.clear();
    } else if (fault != Fault.SWEEPS_NOTHING) {
      batches.removeAll(leftOver);
    }
    return leftOver.size();
  }

  @Override
  public synchronized void close() {
    closed = fault != Fault.WORKS_WHEN_CLOSED;
  }

  private boolean isCommitted(Batch<?> batch) {
    return markers.stream().anyMatch(marker -> marker.id().equals(batch.importId()));
  }

  private void requireUncommitted(ImportId id) {
    if (markers.stream().anyMatch(marker -> marker.id().equals(id))) {
      throw new IllegalStateException(
          "Expected an import without a marker, but import %s is committed".formatted(id));
    }
  }

  private void requireOpen() {
    if (closed) {
      throw new IllegalStateException("The event log is closed");
    }
  }

  private final class Snapshot implements LogSnapshot {
    private final List<ImportMarker> seen;
    private final List<Batch<?>> held;

    Snapshot(List<ImportMarker> seen, List<Batch<?>> held) {
      this.seen = seen;
      this.held = held;
    }

    @Override
    public List<ImportMarker> markers() {
      return List.copyOf(seen);
    }

    @Override
    public <E> void replay(
        LogStream<E> stream,
        int partition,
        Predicate<ImportMarker> which,
        Handler<? super E> handler) {
      stream.requirePartition(partition);
      if (fault == Fault.ORDERS_BY_APPEND) {
        held.forEach(b -> markerOf(b).ifPresent(m -> replay(b, m, stream, partition, handler)));
        return;
      }
      for (ImportMarker marker : seen) {
        if (which.test(marker) || fault == Fault.IGNORES_THE_SELECTION) {
          held.stream()
              .filter(b -> b.importId().equals(marker.id()))
              .forEach(b -> replay(b, marker, stream, partition, handler));
        }
      }
      if (fault == Fault.REVEALS_EARLY) {
        held.stream()
            .filter(b -> markerOf(b).isEmpty())
            .forEach(
                b ->
                    replay(
                        b,
                        SampleMarkers.marker(b.importId(), Optional.empty(), "early"),
                        stream,
                        partition,
                        handler));
      }
    }

    @Override
    public <E> void replayAbout(
        Set<ChipNumber> chips,
        LogStream<E> stream,
        int partition,
        Predicate<ImportMarker> which,
        Handler<? super E> handler) {
      if (fault != Fault.PASSES_OVER_TOO_MUCH || partition > 0) {
        replay(stream, partition, which, handler);
      }
    }

    private Optional<ImportMarker> markerOf(Batch<?> batch) {
      return seen.stream().filter(m -> m.id().equals(batch.importId())).findFirst();
    }

    @SuppressWarnings("unchecked") // as every log does: a stream's name stands for one type
    private <E> void replay(
        Batch<?> batch,
        ImportMarker marker,
        LogStream<E> stream,
        int partition,
        Handler<? super E> handler) {
      boolean here = fault == Fault.MIXES_STREAMS || batch.stream().name().equals(stream.name());
      if (here && batch.partition() == partition) {
        batch.events().forEach(event -> handler.on((E) event, marker));
      }
    }
  }
}
