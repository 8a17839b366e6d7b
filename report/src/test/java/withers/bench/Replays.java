package withers.bench;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import withers.bench.BenchWorld.Month;
import withers.codec.Streams;
import withers.contact.ContactVault;
import withers.contacts.People;
import withers.history.Periods;
import withers.history.Scope;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.reconcile.cli.PeopleOf;
import withers.rule.Assessment;
import withers.run.Outcome;
import withers.run.Reconciliation;
import withers.run.Workers;
import withers.workspace.Workspace;

/** The log from its first event to its last: only read, or judged. */
final class Replays {

  private static final Scope SCOPE = Scope.asOf(Month.FIRST.asOf());

  private Replays() {}

  /** Replays everything that sources said, and counts the events. */
  static Work read(int threads) {
    return (world, watch) -> {
      try (EventLog log = world.workspace().openLog()) {
        LogSnapshot snapshot = log.snapshot();
        long events = watch.time(() -> sharing(snapshot, threads));
        long bytes = BenchWorld.bytes(world.workspace().paths().eventLog());
        return new Work.Done(events, Map.of("bytes", bytes));
      }
    };
  }

  private static long sharing(LogSnapshot log, int threads) throws Exception {
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Callable<Long>> counts =
          places().map(place -> (Callable<Long>) () -> count(log, place)).toList();
      long sum = 0;
      for (Future<Long> count : pool.invokeAll(counts)) {
        sum += count.get();
      }
      return sum;
    } finally {
      pool.shutdownNow();
    }
  }

  /** Every partition of every stream that holds what sources said. */
  static Stream<Streams.Place> places() {
    return Stream.of(Streams.CHIPS, Streams.UNPLACED, Streams.SUPPLY)
        .flatMap(
            stream ->
                IntStream.range(0, stream.partitions())
                    .mapToObj(partition -> new Streams.Place(stream, partition)));
  }

  private static long count(LogSnapshot log, Streams.Place place) {
    long[] events = {0};
    log.replay(place.stream(), place.partition(), (event, marker) -> events[0]++);
    return events[0];
  }

  /** Replays, folds and judges every animal by all rules. */
  static Work judge(int threads) {
    return (world, watch) -> {
      Workspace workspace = world.workspace();
      try (EventLog log = workspace.openLog();
          ContactVault vault = workspace.openVault()) {
        People people = PeopleOf.workspace(workspace, vault::findAll);
        Reconciliation judge = reconciliation(workspace, people, threads);
        Outcome outcome = watch.time(() -> judge.judge(log.snapshot(), SCOPE));
        return done(log, outcome, Map.of("contacts", vault.size()));
      }
    };
  }

  private static Work.Done done(EventLog log, Outcome outcome, Map<String, Long> more) {
    Map<String, Long> counts = new HashMap<>(more);
    counts.put("animals", outcome.animals());
    counts.put("assessed", (long) outcome.assessments().size());
    counts.put("found", outcome.assessments().stream().filter(Replays::isFound).count());
    counts.put("findings", (long) outcome.findings().size());
    counts.put("digest", Digest.of(outcome.findings()));
    return new Work.Done(events(log.snapshot()), counts);
  }

  private static boolean isFound(Assessment assessment) {
    return assessment.finding().isPresent();
  }

  private static Reconciliation reconciliation(Workspace workspace, People people, int threads) {
    return new Reconciliation(
        workspace.directory(),
        people,
        Periods.of(workspace.settings(), workspace.directory()),
        new Workers(threads),
        () -> {});
  }

  /** All events of all imports. */
  static long events(LogSnapshot log) {
    return log.markers().stream().map(ImportMarker::tally).mapToLong(t -> t.events()).sum();
  }
}
