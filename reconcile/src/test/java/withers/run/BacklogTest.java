package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.cases.CaseKey;
import withers.finding.Backlog;
import withers.finding.RunResult;
import withers.history.Scope;
import withers.id.ImportId;
import withers.log.EventLog;
import withers.log.memory.MemoryEventLog;
import withers.point.Points;
import withers.world.World;

/** What organisations begin with. Invented. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class BacklogTest {

  private static final Scope SEPTEMBER = Scope.asOf(LocalDate.of(2026, 9, 1));
  private static final Scope OCTOBER = Scope.asOf(LocalDate.of(2026, 10, 1));

  private final EventLog log = new MemoryEventLog();
  private final AtomicLong ids = new AtomicLong(1000);

  /** Old adoptions whose registration was left as it was: this month's, the later the sooner. */
  private static String adoptions(String exported, int from, int to) {
    return IntStream.range(from, to)
        .mapToObj(
            i ->
                """
                shelter %1$s C%2$d s%2$d went 2026-02-%3$02d adoption own Ada
                north   %1$s C%2$d n%2$d registered 2025-01-01 Shelter
                """
                    .formatted(exported, i, 1 + i % 100))
        .collect(Collectors.joining());
  }

  private RunResult run(String lines, Scope scope, int cap) {
    World world = World.of(lines);
    world.exports().forEach(e -> e.importInto(log, new UUID(0, ids.incrementAndGet()), 10));
    Clock clock = Clock.fixed(Instant.EPOCH, ZoneOffset.UTC);
    Recorder recorder =
        new Recorder(
            log,
            clock,
            () -> new ImportId(new UUID(1, ids.incrementAndGet())),
            new Listing(World.DIRECTORY, cap),
            Points.NONE);
    return recorder.record(world.reconciliation(1).judge(log.snapshot(), scope), scope);
  }

  private static Backlog only(RunResult run) {
    assertThat(run.backlogs()).hasSize(1);
    return run.backlogs().get(0);
  }

  private static List<String> records(List<CaseKey> keys) {
    return keys.stream().map(CaseKey::recordKey).sorted().toList();
  }

  @Test
  void the_first_run_that_finds_anything_begins_a_dated_backlog_and_the_rest_of_it_waits() {
    Backlog backlog = only(run(adoptions("2026-08-31", 100, 105), SEPTEMBER, 2));

    assertThat(backlog.organisation().value()).isEqualTo("shelter");
    assertThat(backlog.since()).isEqualTo(SEPTEMBER.asOf());
    assertThat(backlog.followUps()).hasSize(5);
    assertThat(backlog.waiting()).isEqualTo(backlog.followUps().subList(2, 5));
  }

  @Test
  void what_waits_comes_up_as_others_are_settled_and_what_is_new_is_never_among_it() {
    run(adoptions("2026-08-31", 100, 105), SEPTEMBER, 2);

    String settled = "north 2026-09-30 C101 n101 registered 2026-09-15 Ada\n";
    String listed =
        IntStream.of(100, 102, 103, 104)
            .mapToObj(
                i -> "north 2026-09-30 C%1$d n%1$d registered 2025-01-01 Shelter\n".formatted(i))
            .collect(Collectors.joining());
    RunResult october = run(settled + listed + adoptions("2026-09-30", 106, 108), OCTOBER, 2);

    Backlog backlog = only(october);
    assertThat(backlog.since()).isEqualTo(SEPTEMBER.asOf());
    assertThat(records(backlog.followUps())).containsExactly("s100", "s102", "s103", "s104");
    assertThat(backlog.waiting()).hasSize(2);
    assertThat(records(october.opened())).containsExactly("s106", "s107");
    assertThat(backlog.followUps()).doesNotContainAnyElementsOf(october.opened());
  }

  @Test
  void what_is_urgent_never_waits() {
    String soon = adoptions("2026-08-31", 100, 104).replace("went 2026-02", "went 2026-07");

    assertThat(only(run(soon, SEPTEMBER, 1)).waiting()).isEmpty();
  }

  @Test
  void without_a_cap_nothing_waits() {
    assertThat(only(run(adoptions("2026-08-31", 100, 105), SEPTEMBER, 0)).waiting()).isEmpty();
  }

  @Test
  void the_same_run_again_says_the_same_and_so_does_one_that_looks_back() {
    String lines = adoptions("2026-08-31", 100, 105);
    RunResult first = run(lines, SEPTEMBER, 2);
    assertThat(run("", SEPTEMBER, 2)).isEqualTo(first);

    run(adoptions("2026-09-30", 106, 108), OCTOBER, 2);
    Scope back = new Scope(SEPTEMBER.asOf(), java.util.Optional.of(SEPTEMBER.asOf()));
    assertThat(only(run("", back, 2)).waiting()).isEqualTo(only(first).waiting());
  }
}
