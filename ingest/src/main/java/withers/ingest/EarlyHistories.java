package withers.ingest;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Predicate;
import withers.ingest.change.Rebuilt;
import withers.log.EventLog;
import withers.log.LogSnapshot;
import withers.source.Extent;

/**
 * Rebuilds what sources have said so far while exports of others are imported that come before
 * theirs. One is read ahead at a time. An export that holds all records of its source does without:
 * as a rule it is recognised by the last.
 */
final class EarlyHistories {

  /** What is kept of an event while it is read: some 24 bytes when it is done, as was measured. */
  private static final int BYTES_OF_EVENT = 40;

  /** The part of the heap that what is read ahead may take, beside the import that is going on. */
  private static final int PART_OF_HEAP = 4;

  private final EventLog log;
  private final Rebuilder rebuilder;
  private final Predicate<ExportSet> isWanted;
  private final Executor executor;
  private final long mostEvents;
  private final Deque<ExportSet> waiting = new ArrayDeque<>();
  private Optional<Reading> begun = Optional.empty();

  /**
   * @param rebuilder is asked on the executor's thread
   * @param isWanted whether an export will be compared at all; asked when a core is free
   * @param executor runs what is read ahead when a core is free
   */
  EarlyHistories(
      EventLog log, Rebuilder rebuilder, Predicate<ExportSet> isWanted, Executor executor) {
    this(
        log,
        rebuilder,
        isWanted,
        executor,
        Runtime.getRuntime().maxMemory() / PART_OF_HEAP / BYTES_OF_EVENT);
  }

  /**
   * @param mostEvents of a source about which more was said, nothing is read ahead
   */
  EarlyHistories(
      EventLog log,
      Rebuilder rebuilder,
      Predicate<ExportSet> isWanted,
      Executor executor,
      long mostEvents) {
    this.log = log;
    this.rebuilder = rebuilder;
    this.isWanted = isWanted;
    this.executor = executor;
    this.mostEvents = mostEvents;
  }

  /** Tells the exports that are going to be imported, in this order. */
  void expect(List<ExportSet> sets) {
    waiting.clear();
    sets.stream().skip(1).filter(EarlyHistories::needsAll).forEach(waiting::add);
    beginNext();
  }

  private static boolean needsAll(ExportSet set) {
    return !(set.extent() instanceof Extent.Full);
  }

  /** What was read ahead for an export; empty when nothing was, or its source has said more. */
  Optional<Rebuilt> take(ExportSet set, LogSnapshot now) {
    Optional<Rebuilt> read = begun.filter(one -> one.set.equals(set)).flatMap(Reading::result);
    passed(set); // so the next one is read while this one is imported
    return read.filter(one -> one.isFor(now, set.export()));
  }

  /** An export was imported or refused: nobody will ask for it any more. */
  void passed(ExportSet set) {
    waiting.remove(set);
    if (begun.filter(reading -> reading.set.equals(set)).isPresent()) {
      begun = Optional.empty();
      beginNext();
    }
  }

  private void beginNext() {
    while (begun.isEmpty() && !waiting.isEmpty()) {
      ExportSet next = waiting.remove();
      LogSnapshot now = log.snapshot();
      long events = Rebuilder.events(next, now);
      if (events > 0 && events <= mostEvents) {
        Reading reading = new Reading(next, now);
        begun = Optional.of(reading);
        executor.execute(() -> reading.read(rebuilder, isWanted));
      }
    }
  }

  private static final class Reading {
    private final ExportSet set;
    private final LogSnapshot snapshot;
    private final AtomicBoolean decided = new AtomicBoolean(); // whether it is read ahead
    private final CompletableFuture<Optional<Rebuilt>> result = new CompletableFuture<>();

    Reading(ExportSet set, LogSnapshot snapshot) {
      this.set = set;
      this.snapshot = snapshot;
    }

    void read(Rebuilder rebuilder, Predicate<ExportSet> isWanted) {
      if (decided.compareAndSet(false, true)) {
        Optional<Rebuilt> read = Optional.empty();
        try {
          read = Optional.of(set).filter(isWanted).map(one -> rebuilder.rebuild(one, snapshot));
        } catch (RuntimeException readAgain) {
          // What is to be said of it is said when it is read in its turn.
        } finally {
          result.complete(read);
        }
      }
    }

    /** Empty when nobody has begun to read, who then will not. */
    Optional<Rebuilt> result() {
      return decided.compareAndSet(false, true) ? Optional.empty() : result.join();
    }
  }
}
