package withers.report.send;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Supplier;
import withers.codec.Streams;
import withers.delivery.Delivery;
import withers.delivery.Delivery.Step;
import withers.id.ImportId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.Tally;
import withers.mailing.Mailings;
import withers.source.Extent;
import withers.source.OwnSources;

/**
 * Writes what becomes of mails to the log, each step durable before the next thing happens. The
 * caller holds the workspace's lock.
 */
public final class DeliveryBook {
  private static final String ENDED = "the program was ended before the answer was written";

  private final EventLog log;
  private final Clock clock;
  private final Supplier<ImportId> ids;
  private Optional<ImportId> newest = Optional.empty();

  /**
   * @param clock in the workspace's zone; tells the day of each step
   * @param ids gives a fresh id for each step
   */
  public DeliveryBook(EventLog log, Clock clock, Supplier<ImportId> ids) {
    this.log = log;
    this.clock = clock;
    this.ids = ids;
  }

  /** What was written so far. */
  public Mailings mailings() {
    return Mailings.read(log.snapshot());
  }

  public LocalDate today() {
    return LocalDate.now(clock);
  }

  /**
   * Calls every mail unsure that was being handed over when the program was ended.
   *
   * @return them, in the order in which they were sent
   */
  public List<Delivery> closeUnanswered() {
    List<Delivery> unsure =
        mailings().unanswered().stream()
            .map(pending -> pending.then(Step.UNSURE, today(), ENDED))
            .toList();
    unsure.forEach(this::write);
    return unsure;
  }

  /**
   * Writes a step, durable on return.
   *
   * @throws withers.log.StaleParentException when another program wrote one meanwhile
   */
  public void write(Delivery step) {
    Optional<ImportId> parent = newest.or(this::newestOnLog);
    ImportId id = ids.get();
    log.append(new Batch<>(Streams.DELIVERIES, 0, id, 0, List.of(step)));
    log.commit(
        new ImportMarker(
            id,
            parent,
            OwnSources.DELIVERIES,
            Optional.empty(),
            step.on(),
            new Extent.Changes(),
            List.of(),
            new Tally(0, 0, 0, 0, 0, 1),
            new TreeSet<>(),
            new TreeSet<>(),
            clock.instant()));
    newest = Optional.of(id);
  }

  /** Read once: it takes longer the more was ever sent. */
  private Optional<ImportId> newestOnLog() {
    return log.snapshot().newest(OwnSources.DELIVERIES).map(ImportMarker::id);
  }
}
