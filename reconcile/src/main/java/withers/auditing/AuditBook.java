package withers.auditing;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Supplier;
import withers.audit.AuditEvent;
import withers.codec.Streams;
import withers.id.ImportId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.Tally;
import withers.source.Extent;
import withers.source.OwnSources;

/**
 * Writes to the log who saw, and who had removed, what is held on people. The caller holds the
 * workspace's lock.
 *
 * @param clock in the workspace's zone
 * @param ids gives a fresh id for each entry
 */
public record AuditBook(EventLog log, Clock clock, Supplier<ImportId> ids) {

  /** Everything that was written, in its order. */
  public static List<AuditEvent> read(LogSnapshot log) {
    List<AuditEvent> all = new ArrayList<>();
    log.<AuditEvent>replay(Streams.AUDIT, 0, (event, marker) -> all.add(event));
    return all;
  }

  /** Writes an entry, durable on return. */
  public void write(AuditEvent event) {
    Optional<ImportId> parent = log.snapshot().newest(OwnSources.AUDIT).map(ImportMarker::id);
    ImportId id = ids.get();
    log.append(new Batch<>(Streams.AUDIT, 0, id, 0, List.of(event)));
    log.commit(
        new ImportMarker(
            id,
            parent,
            OwnSources.AUDIT,
            Optional.empty(),
            event.on(),
            new Extent.Changes(),
            List.of(),
            new Tally(0, 0, 0, 0, 0, 1),
            new TreeSet<>(),
            new TreeSet<>(),
            clock.instant()));
  }
}
