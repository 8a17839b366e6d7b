package withers.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Predicate;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withers.chip.ChipNumber;
import withers.chip.OneSlip;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Subject;
import withers.history.Scope;
import withers.id.OrganisationId;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.LogStream;
import withers.log.sqlite.ChipFilters;
import withers.log.sqlite.SqliteEventLog;
import withers.sqlite.Upgrading;
import withers.workspace.OwnerOnly;
import withers.world.Chips;
import withers.world.Export;
import withers.world.RandomWorld;
import withers.world.World;

/**
 * What a trace says does not depend on whether it decodes the chunks of the log that it needs, or
 * all: in worlds with animals of two chips, damaged and cut numbers, animals without a number and
 * corrections.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class TraceReadsEnoughTest {

  private static final int CHIPS = 40;
  private static final int BATCH = 3;
  private static final LocalDate TODAY = RandomWorld.ROUNDS.get(3).plusDays(1);

  @TempDir private Path folder;

  /** The same log, of which every chunk is decoded for every question. */
  private record ReadsAll(LogSnapshot log) implements LogSnapshot {
    @Override
    public List<ImportMarker> markers() {
      return log.markers();
    }

    @Override
    public <E> void replay(
        LogStream<E> stream,
        int partition,
        Predicate<ImportMarker> which,
        Handler<? super E> handler) {
      log.replay(stream, partition, which, handler);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void a_trace_says_the_same_when_it_reads_all(long seed) {
    World world = World.of(RandomWorld.lines(seed, CHIPS, 0));
    try (EventLog log = log(world)) {
      LogSnapshot snapshot = log.snapshot();
      Tracer tracer = tracer(snapshot, world);
      Tracer thorough = tracer(new ReadsAll(snapshot), world);
      Set<ChipNumber> numbers = numbers(world);
      assertThat(numbers).hasSizeGreaterThan(CHIPS);
      for (ChipNumber number : numbers) {
        Trace trace = tracer.trace(number);
        Trace whole = thorough.trace(number);
        assertThat(trace).as("seed %d, %s", seed, number).isEqualTo(whole);
        assertThat(TraceText.of(trace, tracer.wording()))
            .isEqualTo(TraceText.of(whole, thorough.wording()));
      }
    }
  }

  private EventLog log(World world) {
    EventLog log =
        SqliteEventLog.open(
            folder.resolve("events.db"),
            Upgrading.REFUSED,
            ChipFilters.in(folder.resolve("filters"), OwnerOnly::openAnew, 1));
    long number = 0;
    for (Export export : world.exports()) {
      export.importInto(log, new UUID(0, ++number), BATCH);
    }
    return log;
  }

  private static Tracer tracer(LogSnapshot log, World world) {
    return new Tracer(
        log,
        Scope.asOf(TODAY),
        World.DIRECTORY,
        new OrganisationId("desk"),
        world.people(),
        World.PERIODS);
  }

  /** All numbers that records speak of in any way, and one that nobody speaks of. */
  private static Set<ChipNumber> numbers(World world) {
    Set<ChipNumber> numbers = new TreeSet<>();
    for (Export export : world.exports()) {
      export.events().forEach(event -> add(event, numbers));
    }
    OneSlip.neighbours(Chips.chip(1)).limit(3).mapToObj(ChipNumber::ofPacked).forEach(numbers::add);
    return numbers;
  }

  private static void add(ChipEvent event, Set<ChipNumber> numbers) {
    event.subject().chip().ifPresent(numbers::add);
    if (event.subject() instanceof Subject.Damaged damaged) {
      numbers.addAll(damaged.candidates());
    }
    if (event.fact() instanceof Fact.PairedWith paired) {
      numbers.add(paired.other());
    }
  }
}
