package withers.run;

import java.time.Clock;
import java.util.List;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.answered.LifeMaker;
import withers.cases.CaseEvent;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.codec.Streams;
import withers.codec.finding.CanonicalFindings;
import withers.finding.Finding;
import withers.finding.Life;
import withers.finding.RunResult;
import withers.history.Scope;
import withers.id.ImportId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.StaleParentException;
import withers.log.Tally;
import withers.point.Point;
import withers.point.Points;
import withers.run.FollowUps.RunName;
import withers.source.Extent;

/**
 * Carries the follow-ups on, all of a run or nothing. Recording the same run again changes nothing.
 *
 * @param clock when it was recorded; never part of a finding
 * @param ids a fresh id for every attempt
 * @param listing what lists show of what is found
 * @param points told of each point of the recording
 */
public record Recorder(
    EventLog log, Clock clock, Supplier<ImportId> ids, Listing listing, Points points) {

  /** Events that go into one batch. */
  private static final int BATCH = 10_000;

  /** Attempts when other runs come in between. */
  private static final int ATTEMPTS = 5;

  /**
   * Compares what was found with the follow-ups that are open, and writes the changes, unless the
   * run looks back.
   *
   * @throws StaleParentException when other runs keep coming in between
   */
  public RunResult record(Outcome outcome, Scope scope) {
    return record(outcome, scope, CanonicalFindings.of(outcome.findings()));
  }

  /**
   * The same for who has the canonical form of what was found already: to make it takes long.
   *
   * @throws StaleParentException when other runs keep coming in between
   */
  public RunResult record(Outcome outcome, Scope scope, CanonicalFindings canonical) {
    RunName name = new RunName(RunIds.of(scope, canonical), scope);
    for (int attempt = 1; ; attempt++) {
      FollowUps before = FollowUps.before(name, log.snapshot());
      Changes changes = Changes.of(before.open(), before.rekeyed(), outcome);
      try {
        if (before.isToBeWritten()) {
          write(name, before, changes, canonical);
        }
        return result(name, outcome, changes, before);
      } catch (StaleParentException overtaken) {
        if (attempt == ATTEMPTS) {
          throw overtaken;
        }
      }
    }
  }

  private void write(RunName name, FollowUps before, Changes changes, CanonicalFindings canonical) {
    ImportId id = ids.get();
    List<CaseStep> events = changes.events(name.scope().asOf(), name.id());
    for (int from = 0, sequence = 0; from < events.size(); from += BATCH, sequence++) {
      List<CaseEvent> some =
          List.copyOf(events.subList(from, Math.min(events.size(), from + BATCH)));
      log.append(new Batch<>(Streams.CASES, 0, id, sequence, some));
      points.reached(Point.RUN_AFTER_FIRST_BATCH);
    }
    points.reached(Point.RUN_BEFORE_MARKER);
    log.commit(marker(id, name, before, canonical, events.size()));
    points.reached(Point.RUN_AFTER_MARKER);
  }

  private ImportMarker marker(
      ImportId id, RunName name, FollowUps before, CanonicalFindings canonical, int events) {
    return new ImportMarker(
        id,
        before.newest().map(ImportMarker::id),
        FollowUps.CHAIN,
        java.util.Optional.empty(),
        name.scope().asOf(),
        new Extent.Changes(),
        List.of(new ImportMarker.FileRead(name.id(), canonical.sha256(), canonical.count(), "")),
        new Tally(0, 0, 0, 0, 0, events),
        new TreeSet<>(),
        new TreeSet<>(),
        clock.instant());
  }

  private RunResult result(RunName name, Outcome outcome, Changes changes, FollowUps before) {
    List<Finding> findings = outcome.findings();
    List<Life> lives = lives(name.scope(), before, changes, outcome).all();
    Set<CaseKey> resting =
        lives.stream().filter(Life::rests).map(Life::key).collect(Collectors.toSet());
    Backlogs backlogs =
        new Backlogs(name.scope().asOf(), before.beginnings(), changes.moved(), resting, listing);
    return new RunResult(
        name.id(),
        name.scope().asOf(),
        name.scope().knownBy(),
        outcome.animals(),
        findings,
        outcome.notJudged(),
        outcome.questions(listing),
        changes.opened(),
        changes.stillOpen(),
        changes.closed(),
        backlogs.of(outcome.found()),
        aside(changes),
        settled(outcome, changes),
        lives);
  }

  private Lives lives(Scope scope, FollowUps before, Changes changes, Outcome outcome) {
    LogSnapshot snapshot = log.snapshot();
    LifeMaker maker =
        new LifeMaker(
            AnswerReader.read(snapshot, scope),
            SettlementReader.read(snapshot, scope),
            scope.asOf(),
            listing.answerWait());
    return new Lives(maker, before.openings(), changes, outcome);
  }

  /** What people settled, and records would say again or may: each under one of its names. */
  private static List<CaseKey> settled(Outcome outcome, Changes changes) {
    NavigableSet<CaseKey> settled = new TreeSet<>(outcome.answered());
    settled.addAll(outcome.heldBack().stream().map(Finding::caseKey).toList());
    settled.removeAll(changes.opened());
    settled.removeAll(changes.stillOpen());
    return List.copyOf(settled);
  }

  private List<CaseKey> aside(Changes changes) {
    return Stream.of(changes.opened(), changes.stillOpen(), changes.closed())
        .flatMap(List::stream)
        .filter(listing::isAside)
        .sorted()
        .toList();
  }
}
