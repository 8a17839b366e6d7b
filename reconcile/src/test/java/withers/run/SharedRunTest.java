package withers.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.audit.AuditEvent;
import withers.audit.Confidential;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.codec.finding.CanonicalFindings;
import withers.history.Scope;
import withers.id.ImportId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogDamagedException;
import withers.log.LogSnapshot;
import withers.log.LogUnavailableException;
import withers.log.Tally;
import withers.source.Extent;
import withers.source.OwnSources;
import withers.work.Crew;
import withers.world.AnyEvents;
import withers.world.RandomWorld;
import withers.world.World;

/**
 * What others judge who have no vault is what is judged beside it: the bytes go through orders,
 * questions, answers and results, and only the broker is left out.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class SharedRunTest {
  private static final int SEEDS = 40;
  private static final int CHIPS = 12;
  private static final Scope SCOPE = Scope.asOf(LocalDate.of(2026, 10, 1));

  /** Workers in this thread, who judge some parts and let others be. */
  private static class Here implements Crew {
    private final LogSnapshot log;
    private final IntPredicate which;
    private int parts;

    Here(LogSnapshot log, IntPredicate which) {
      this.log = log;
      this.which = which;
    }

    @Override
    public void work(String order, int number, Desk desk) {
      PartWork work = new PartWork(log, PartOrder.read(order), World.DIRECTORY, World.PERIODS);
      for (int part = 0; part < number; part++) {
        if (which.test(part)) {
          desk.done(part, work.judge(part, desk::answer));
          parts++;
        }
      }
    }

    @Override
    public List<Share> shares() {
      return List.of();
    }

    @Override
    public List<String> notes() {
      return List.of();
    }
  }

  @Test
  void no_byte_depends_on_who_judged_which_partition() {
    for (long seed = 0; seed < SEEDS; seed++) {
      World world = world(seed);
      Random random = new Random(seed);
      assertSame(world, new Here(world.log().snapshot(), part -> random.nextInt(4) > 0), seed);
    }
  }

  @Test
  void the_same_holds_for_events_that_make_no_sense() {
    for (long seed = 0; seed < SEEDS; seed++) {
      World world = AnyEvents.world(seed, 60);
      assertSame(world, new Here(world.log().snapshot(), part -> true), seed);
    }
  }

  private static void assertSame(World world, Here crew, long seed) {
    Outcome alone = world.judge(SCOPE);
    Outcome shared = world.reconciliation(1).sharedWith(crew).judge(world.log().snapshot(), SCOPE);

    assertThat(crew.parts).isPositive();
    assertThat(canonical(shared)).as("seed " + seed).isEqualTo(canonical(alone));
    assertThat(shared.findings()).as("seed " + seed).isEqualTo(alone.findings());
    assertThat(shared.notJudged()).as("seed " + seed).isEqualTo(alone.notJudged());
    assertThat(shared.animals()).as("seed " + seed).isEqualTo(alone.animals());
    assertThat(shared.heldBack()).as("seed " + seed).isEqualTo(alone.heldBack());
    assertThat(Undecided.of(shared)).as("seed " + seed).isEqualTo(Undecided.of(alone));
  }

  @Test
  void what_is_confidential_is_silent_wherever_it_is_judged() {
    World world = world(2);
    EventLog log = world.log();
    List<ChipNumber> chips = world.judge(SCOPE).assessments().get(0).chips();
    ImportId id = new ImportId(new UUID(3, 1));
    log.append(new Batch<>(Streams.AUDIT, 0, id, 0, List.of(mark(chips))));
    log.commit(marker(id));

    Outcome alone = world.reconciliation(1).judge(log.snapshot(), SCOPE);
    Here crew = new Here(log.snapshot(), part -> true);
    Outcome shared = world.reconciliation(1).sharedWith(crew).judge(log.snapshot(), SCOPE);

    assertThat(canonical(shared)).isEqualTo(canonical(alone));
    assertThat(Undecided.of(shared)).isEqualTo(Undecided.of(alone));
    assertThat(Undecided.of(shared)).isNotEqualTo(Undecided.of(world.judge(SCOPE)));
  }

  private static AuditEvent mark(List<ChipNumber> chips) {
    return new Confidential(SCOPE.asOf(), "desk", "a dispute", List.of(), List.of(), chips, false);
  }

  private static ImportMarker marker(ImportId id) {
    return new ImportMarker(
        id,
        Optional.empty(),
        OwnSources.AUDIT,
        Optional.empty(),
        SCOPE.asOf(),
        new Extent.Changes(),
        List.of(),
        Tally.NOTHING,
        new TreeSet<>(),
        new TreeSet<>(),
        Instant.EPOCH);
  }

  @Test
  void imports_that_came_after_the_order_are_not_heard() {
    World world = world(1);
    LogSnapshot log = world.log().snapshot();
    LogSnapshot before =
        World.log(world.exports().subList(0, world.exports().size() - 1), 5).snapshot();
    Outcome alone = world.reconciliation(1).judge(before, SCOPE);

    Outcome shared =
        world.reconciliation(1).sharedWith(new Here(log, part -> true)).judge(before, SCOPE);

    assertThat(canonical(shared)).isEqualTo(canonical(alone));
    assertThat(canonical(shared)).isNotEqualTo(canonical(world.judge(SCOPE)));
  }

  @Test
  void a_worker_with_another_log_says_so() {
    LogSnapshot log = world(1).log().snapshot();
    PartOrder more = new PartOrder(SCOPE, log.markers().size() + 1, Optional.empty());

    assertThatThrownBy(() -> new PartWork(log, more, World.DIRECTORY, World.PERIODS))
        .isInstanceOf(LogUnavailableException.class)
        .hasMessage(
            "Expected the event log that the run was ordered on, with %d imports, but found another one: let log.kafka be the same here as there",
            log.markers().size() + 1);
  }

  @Test
  void an_order_comes_back_as_it_was_and_other_text_is_none() {
    PartOrder looksBack =
        new PartOrder(
            new Scope(SCOPE.asOf(), Optional.of(LocalDate.of(2026, 8, 1))), 0, Optional.empty());
    PartOrder order = PartOrder.of(world(1).log().snapshot(), SCOPE);

    assertThat(PartOrder.read(looksBack.text())).isEqualTo(looksBack);
    assertThat(PartOrder.read(order.text())).isEqualTo(order);
    assertThatThrownBy(() -> PartOrder.read("2026-10-01\n-\nmany\n-"))
        .isInstanceOf(LogDamagedException.class);
  }

  @Test
  void a_result_that_was_cut_is_none() {
    World world = world(1);
    byte[][] result = {{}};
    Crew cut =
        new Here(world.log().snapshot(), part -> part == 0) {
          @Override
          public void work(String order, int number, Desk desk) {
            super.work(
                order,
                number,
                new Desk() {
                  @Override
                  public byte[] answer(byte[] question) {
                    return desk.answer(question);
                  }

                  @Override
                  public void done(int part, byte[] whole) {
                    result[0] = whole;
                    desk.done(part, java.util.Arrays.copyOf(whole, whole.length - 1));
                  }
                });
          }
        };

    assertThatThrownBy(
            () -> world.reconciliation(1).sharedWith(cut).judge(world.log().snapshot(), SCOPE))
        .isInstanceOf(LogDamagedException.class);
    assertThat(result[0]).isNotEmpty();
  }

  private static World world(long seed) {
    World world = World.of(RandomWorld.lines(seed, CHIPS, 0));
    return seed % 2 == 0 ? world : world.withholding("north", RandomWorld.ROUNDS.get(2));
  }

  private static String canonical(Outcome outcome) {
    return CanonicalFindings.of(outcome.findings()).text();
  }
}
