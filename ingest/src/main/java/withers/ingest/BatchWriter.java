package withers.ingest;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Semaphore;
import withers.codec.Streams;
import withers.contact.ContactVault;
import withers.contact.Referenced;
import withers.fact.ChipEvent;
import withers.id.ImportId;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.point.Point;
import withers.point.Points;
import withers.waiting.Waiting;

/**
 * Gathers what an import writes and writes it in bounded batches: contacts first, so that no
 * reference on the log is without its contact. While some are written the next are gathered, and
 * what came meanwhile is written together: the larger the vault, the more it costs to write a few
 * contacts at a time. Close it, to be sure that nothing is being written any more.
 */
final class BatchWriter implements AutoCloseable {

  private static final Waiting WAITING =
      new Waiting("The import was interrupted", "A batch could not be written");

  /**
   * Heap for each batch that was handed over and is not written: 64,000 events and their contacts
   * are some 7 MB as bytes (our arithmetic).
   */
  private static final long HEAP_FOR_A_BATCH = 32L << 20;

  /** One is written while the next waits. */
  private static final int FEWEST = 2;

  /** What is written together is lost together when the program is killed (our judgement). */
  private static final int MOST = 32;

  /**
   * Contacts and events that are being put into bytes.
   *
   * @param storing empty without contacts
   * @param stored when the contacts are
   */
  private record Load(
      Optional<CompletableFuture<ContactVault.Storing>> storing,
      CompletableFuture<EventLog.Appending> appending,
      CompletableFuture<Void> stored,
      boolean isFirst) {}

  private final EventLog log;
  private final ContactVault vault;
  private final SourceId source;
  private final ImportId id;
  private final Points points;
  private final int batch;
  private final Map<Streams.Place, List<ChipEvent>> events = new HashMap<>();
  private final Map<Streams.Place, Integer> sequences = new HashMap<>();
  private final List<ContactVault.Deposit> deposits = new ArrayList<>();
  private final ExecutorService thread = Executors.newSingleThreadExecutor();
  private final List<Load> held = new ArrayList<>();
  private final Queue<Load> ready = new ConcurrentLinkedQueue<>();
  private final Semaphore room;
  private CompletableFuture<Void> written = CompletableFuture.completedFuture(null);
  private CompletableFuture<Void> lastStored = CompletableFuture.completedFuture(null);
  private boolean isFailureTold;
  private boolean holdsBack;
  private boolean begun;
  private int waiting;
  private long handedOver;

  BatchWriter(
      EventLog log, ContactVault vault, SourceId source, ImportId id, Points points, int batch) {
    this(log, vault, source, id, points, batch, room(Runtime.getRuntime().maxMemory()));
  }

  /**
   * @param room how many batches may be handed over and not written
   */
  BatchWriter(
      EventLog log,
      ContactVault vault,
      SourceId source,
      ImportId id,
      Points points,
      int batch,
      int room) {
    this.log = log;
    this.vault = vault;
    this.source = source;
    this.id = id;
    this.points = points;
    this.batch = batch;
    this.room = new Semaphore(room);
  }

  private static int room(long heap) {
    return (int) Math.max(FEWEST, Math.min(MOST, heap / HEAP_FOR_A_BATCH));
  }

  /** Writes nothing from now on until it is {@linkplain #release released}. */
  void holdBack() {
    holdsBack = true;
  }

  /** Begins to write what was held back, if anything was. */
  void release() {
    holdsBack = false;
    if (!held.isEmpty()) {
      held.forEach(this::submit);
      held.clear();
    }
  }

  void event(ChipEvent event) {
    events.computeIfAbsent(Streams.placeOf(event), place -> new ArrayList<>()).add(event);
    waiting++;
  }

  void contacts(RecordKey key, List<Referenced> contacts) {
    for (Referenced one : contacts) {
      deposits.add(
          new ContactVault.Deposit(one.contact(), Optional.of(one.reference()), source, key));
    }
  }

  /** Stores contacts that wait, when there are no events to be written. */
  void storeContacts() {
    settle();
    vault.store(deposits);
    deposits.clear();
  }

  /** Writes when a batch is full. Call between rows only: a row's contacts follow its events. */
  void flushIfFull() {
    if (waiting >= batch) {
      handOver();
    }
  }

  /** Has what waits encoded, or even written, though it fills no batch. Call between rows only. */
  void handOverTheRest() {
    if (waiting > 0 || !deposits.isEmpty()) {
      handOver();
    }
  }

  /** Writes what is left, and returns when everything is written. */
  void flush() {
    flush(() -> {});
  }

  /**
   * Writes what is left, and returns when everything is written.
   *
   * @param meanwhile what there is to do until then
   */
  void flush(Runnable meanwhile) {
    if (begun) {
      handOverTheRest();
    } else {
      handOver(); // also when there is nothing: an import without events comes to the same points
    }
    CompletableFuture<Void> unused = lastStored.thenRunAsync(vault::rest); // beside appending
    meanwhile.run();
    settle();
  }

  private void handOver() {
    List<Batch<ChipEvent>> batches = batches();
    List<ContactVault.Deposit> contacts = List.copyOf(deposits);
    Load load =
        new Load(
            Optional.of(contacts)
                .filter(some -> !some.isEmpty())
                .map(some -> CompletableFuture.supplyAsync(() -> vault.prepare(some))),
            CompletableFuture.supplyAsync(() -> log.prepare(batches)),
            new CompletableFuture<>(),
            !begun);
    begun = true;
    lastStored = load.stored;
    deposits.clear();
    events.clear();
    handedOver += waiting;
    waiting = 0;
    if (holdsBack) {
      held.add(load);
    } else {
      submit(load);
    }
  }

  private void submit(Load load) {
    if (written.isDone()) {
      settle(); // fails if it did, before more is gathered
    }
    room.acquireUninterruptibly();
    ready.add(load);
    // After a failure the next in the chain does nothing, and fails alike.
    written =
        written
            .thenRunAsync(this::writeAllThatIsReady, thread)
            .whenComplete((nothing, failure) -> room.release());
  }

  /** Once for each that was submitted: those that were written with one before are gone by then. */
  private void writeAllThatIsReady() {
    List<Load> loads = new ArrayList<>();
    for (Load next = ready.poll(); next != null; next = ready.poll()) {
      loads.add(next);
    }
    if (!loads.isEmpty()) {
      write(loads);
    }
  }

  private List<Batch<ChipEvent>> batches() {
    List<Batch<ChipEvent>> batches = new ArrayList<>();
    events.forEach(
        (place, list) ->
            batches.add(
                new Batch<>(
                    place.stream(),
                    place.partition(),
                    id,
                    sequences.merge(place, 1, Integer::sum) - 1,
                    list)));
    return batches;
  }

  private void write(List<Load> loads) {
    boolean isFirst = loads.get(0).isFirst;
    at(isFirst, Point.IMPORT_BEFORE_VAULT);
    vault.storeAll(
        loads.stream()
            .flatMap(load -> load.storing.stream())
            .map(CompletableFuture::join)
            .toList());
    loads.forEach(load -> load.stored.complete(null));
    at(isFirst, Point.IMPORT_AFTER_VAULT);
    for (Load load : loads) {
      load.appending.join().append();
      at(load.isFirst, Point.IMPORT_AFTER_FIRST_BATCH);
    }
  }

  private void at(boolean isFirst, Point step) {
    if (isFirst) {
      points.reached(step);
    }
  }

  /** Waits for all that is being written, and fails if any of it did. */
  private void settle() {
    try {
      WAITING.on(written);
    } catch (RuntimeException e) {
      isFailureTold = true;
      throw e;
    }
  }

  /** How many events were handed over. */
  long count() {
    return handedOver + waiting;
  }

  @Override
  public void close() {
    try {
      if (!isFailureTold) {
        settle();
      }
    } finally {
      thread.shutdown();
    }
  }
}
