package withers.settling;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Supplier;
import withers.cases.CaseEvent;
import withers.cases.CaseKey;
import withers.cases.Settled;
import withers.cases.Settlement;
import withers.codec.Streams;
import withers.id.ImportId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.StaleParentException;
import withers.log.Tally;
import withers.source.Extent;
import withers.source.OwnSources;

/**
 * Writes down what people settle, each as an import of its own. Their numbers count up; the parent
 * check of imports gives each number once.
 *
 * @param clock in the workspace's zone; tells when it is recorded
 * @param ids gives a fresh id for each attempt
 */
public record SettlementLog(EventLog log, Clock clock, Supplier<ImportId> ids) {

  private static final int ATTEMPTS = 3;

  /**
   * What a person says.
   *
   * @param day when the person found out
   * @param until the last day on which it holds; empty when no end is known
   * @param by in which role
   */
  public record Word(
      CaseKey key,
      Settlement says,
      LocalDate day,
      Optional<LocalDate> until,
      String by,
      String reason) {

    Settled settled(long number, LocalDate recorded) {
      return new Settled(number, key, recorded, day, until, by, reason, says);
    }
  }

  /**
   * Writes it down, unless the last word about the same follow-up is the same.
   *
   * @return whether it was new
   * @throws StaleParentException when others were faster again and again; nothing was changed
   */
  public boolean write(Word word) {
    for (int attempt = 1; ; attempt++) {
      try {
        return attempt(word);
      } catch (StaleParentException stale) {
        if (attempt == ATTEMPTS) {
          throw stale;
        }
      }
    }
  }

  private boolean attempt(Word word) {
    LogSnapshot snapshot = log.snapshot();
    List<Settled> before = all(snapshot);
    long number = before.stream().mapToLong(Settled::number).max().orElse(0) + 1;
    Settled next = word.settled(number, LocalDate.now(clock));
    Optional<Settled> last =
        before.stream()
            .filter(one -> one.key().equals(word.key()))
            .reduce((one, later) -> one.number() < later.number() ? later : one);
    if (last.filter(next::saysTheSame).isPresent()) {
      return false;
    }
    append(next, snapshot);
    return true;
  }

  private static List<Settled> all(LogSnapshot snapshot) {
    List<Settled> all = new ArrayList<>();
    snapshot.<CaseEvent>replay(
        Streams.CASES,
        0,
        marker -> marker.chain().equals(OwnSources.SETTLEMENTS),
        (event, marker) -> {
          if (event instanceof Settled settled) {
            all.add(settled);
          }
        });
    return all;
  }

  private void append(Settled settled, LogSnapshot snapshot) {
    ImportId id = ids.get();
    log.append(new Batch<>(Streams.CASES, 0, id, 0, List.of(settled)));
    log.commit(
        new ImportMarker(
            id,
            snapshot.newest(OwnSources.SETTLEMENTS).map(ImportMarker::id),
            OwnSources.SETTLEMENTS,
            Optional.empty(),
            settled.recorded(),
            new Extent.Changes(),
            List.of(),
            new Tally(0, 0, 0, 0, 0, 1),
            new TreeSet<>(),
            new TreeSet<>(),
            clock.instant()));
  }
}
