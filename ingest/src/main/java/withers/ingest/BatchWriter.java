package withers.ingest;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import withers.codec.Streams;
import withers.contact.Contact;
import withers.contact.ContactVault;
import withers.fact.ChipEvent;
import withers.id.ImportId;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.log.Batch;
import withers.log.EventLog;

/**
 * Gathers what an import writes and writes it in bounded batches: contacts first, so that no
 * reference on the log is without its contact.
 */
final class BatchWriter {

  private final EventLog log;
  private final ContactVault vault;
  private final SourceId source;
  private final ImportId id;
  private final ImportObserver observer;
  private final int batch;
  private final Map<Streams.Place, List<ChipEvent>> events = new HashMap<>();
  private final Map<Streams.Place, Integer> sequences = new HashMap<>();
  private final List<ContactVault.Deposit> deposits = new ArrayList<>();
  private int waiting;
  private long written;

  BatchWriter(
      EventLog log,
      ContactVault vault,
      SourceId source,
      ImportId id,
      ImportObserver observer,
      int batch) {
    this.log = log;
    this.vault = vault;
    this.source = source;
    this.id = id;
    this.observer = observer;
    this.batch = batch;
  }

  void event(ChipEvent event) {
    events.computeIfAbsent(Streams.placeOf(event), place -> new ArrayList<>()).add(event);
    waiting++;
  }

  void contacts(RecordKey key, List<Contact> contacts) {
    contacts.forEach(contact -> deposits.add(new ContactVault.Deposit(contact, source, key)));
  }

  /** Writes when a batch is full. Call between rows only: a row's contacts follow its events. */
  void flushIfFull() {
    if (waiting >= batch) {
      flush();
    }
  }

  /** Writes what is left. */
  void flush() {
    boolean isFirst = written == 0;
    at(isFirst, ImportStep.BEFORE_VAULT);
    if (!deposits.isEmpty()) {
      vault.store(deposits);
      deposits.clear();
    }
    at(isFirst, ImportStep.AFTER_VAULT);
    append();
    at(isFirst, ImportStep.AFTER_FIRST_BATCH);
  }

  private void at(boolean isFirst, ImportStep step) {
    if (isFirst) {
      observer.at(step);
    }
  }

  private void append() {
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
    log.appendAll(batches);
    events.clear();
    written += waiting;
    waiting = 0;
  }

  /** How many events were handed over. */
  long count() {
    return written + waiting;
  }
}
