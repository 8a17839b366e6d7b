package withers.ingest;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
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
 * reference on the log is without its contact. One batch is written while the next is gathered, and
 * never two at a time. Close it, to be sure that nothing is being written any more.
 */
final class BatchWriter implements AutoCloseable {

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

  private static final Waiting WAITING =
      new Waiting("The import was interrupted", "A batch could not be written");

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
  private Optional<Future<?>> underWay = Optional.empty();
  private CompletableFuture<Void> lastStored = CompletableFuture.completedFuture(null);
  private boolean holdsBack;
  private boolean begun;
  private int waiting;
  private long handedOver;

  BatchWriter(
      EventLog log, ContactVault vault, SourceId source, ImportId id, Points points, int batch) {
    this.log = log;
    this.vault = vault;
    this.source = source;
    this.id = id;
    this.points = points;
    this.batch = batch;
  }

  /** Writes nothing from now on until it is {@linkplain #release released}. */
  void holdBack() {
    holdsBack = true;
  }

  /** Begins to write what was held back, if anything was. */
  void release() {
    holdsBack = false;
    if (!held.isEmpty()) {
      submit(List.copyOf(held));
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
      submit(List.of(load));
    }
  }

  private void submit(List<Load> loads) {
    settle();
    underWay = Optional.of(thread.submit(() -> loads.forEach(this::write)));
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

  private void write(Load load) {
    at(load.isFirst, Point.IMPORT_BEFORE_VAULT);
    load.storing.ifPresent(contacts -> contacts.join().store());
    load.stored.complete(null);
    at(load.isFirst, Point.IMPORT_AFTER_VAULT);
    load.appending.join().append();
    at(load.isFirst, Point.IMPORT_AFTER_FIRST_BATCH);
  }

  private void at(boolean isFirst, Point step) {
    if (isFirst) {
      points.reached(step);
    }
  }

  /** Waits for the batch that is being written, and fails if it did. */
  private void settle() {
    Optional<Future<?>> last = underWay;
    underWay = Optional.empty();
    last.ifPresent(WAITING::on);
  }

  /** How many events were handed over. */
  long count() {
    return handedOver + waiting;
  }

  @Override
  public void close() {
    thread.shutdown();
    settle();
  }
}
