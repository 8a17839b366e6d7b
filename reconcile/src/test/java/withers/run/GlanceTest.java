package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.codec.Streams;
import withers.custody.Cast;
import withers.damage.CutNumbers;
import withers.history.Animal;
import withers.history.History;
import withers.history.Scope;
import withers.history.Sources;
import withers.log.LogSnapshot;
import withers.registration.Registries;
import withers.rule.Rules;
import withers.slip.Candidates;
import withers.slip.Side;
import withers.supply.Supplies;
import withers.world.AnyEvents;
import withers.world.RandomWorld;
import withers.world.World;

/**
 * What is seen to be clear at a glance is what all rules are clear of: whatever a glance says is
 * compared with what the rules say. {@code -Dglance.seeds=N} asks for more worlds.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class GlanceTest {

  private static final int SEEDS = Integer.getInteger("glance.seeds", 300);
  private static final int CHIPS = 12;

  @Test
  void a_glance_never_says_more_than_the_rules_of_random_worlds() {
    Counted counted = new Counted();
    for (long seed = 0; seed < SEEDS; seed++) {
      World world = World.of(RandomWorld.lines(seed, CHIPS, 0));
      for (LocalDate round : RandomWorld.ROUNDS) {
        look(world, Scope.asOf(round.plusDays(1)), "seed " + seed, counted);
      }
    }
    assertThat(counted.clear).isGreaterThan(SEEDS / 10);
    assertThat(counted.strays).isGreaterThan(SEEDS / 10);
    assertThat(counted.unsure).isGreaterThan(SEEDS);
  }

  @Test
  void a_glance_never_says_more_than_the_rules_of_events_that_make_no_sense() {
    Counted counted = new Counted();
    for (long seed = 0; seed < SEEDS; seed++) {
      World world = AnyEvents.world(seed, 60);
      look(world, Scope.asOf(LocalDate.of(2026, 10, 1)), "seed " + seed, counted);
    }
    assertThat(counted.unsure).isPositive();
  }

  private static final class Counted {
    private int clear;
    private int strays;
    private int unsure;
  }

  private static void look(World world, Scope scope, String seed, Counted counted) {
    LogSnapshot log = world.log().snapshot();
    Sources sources = Sources.of(log.markers(), scope);
    Cast cast = new Cast(world.people(), sources, SettlementReader.read(log, scope));
    Rules rules =
        new Rules(new Registries(World.DIRECTORY, cast, World.PERIODS), Supplies.read(log, cast));
    alone(log, cast).forEach(history -> compare(history, rules, seed, counted));
  }

  private static Stream<History> alone(LogSnapshot log, Cast cast) {
    PartitionReader reader = new PartitionReader(log, cast.sources(), cast.settlements());
    Unplaced unplaced = Unplaced.read(log, cast.sources());
    CutNumbers cut = new CutNumbers(cast.sources());
    return IntStream.range(0, Streams.CHIPS.partitions())
        .boxed()
        .flatMap(reader::everSpokenOf)
        .filter(history -> StandAlone.isAlone(history, cut, unplaced));
  }

  private static void compare(History history, Rules rules, String seed, Counted counted) {
    Candidates.Part atAGlance = new Candidates.Part();
    Candidates.Part byRules = new Candidates.Part();
    if (!rules.isPlainlyClear(history, atAGlance)) {
      counted.unsure++;
      return;
    }
    String animal = seed + ", " + history.chip();
    assertThat(rules.assess(Animal.of(List.of(history)), byRules).isClear()).as(animal).isTrue();
    SortedSet<String> strays = strays(atAGlance);
    assertThat(strays).as(animal).isEqualTo(strays(byRules));
    counted.clear += strays.isEmpty() ? 1 : 0;
    counted.strays += strays.isEmpty() ? 0 : 1;
  }

  /** All that was put aside, in words. */
  private static SortedSet<String> strays(Candidates.Part part) {
    SortedSet<String> all = new TreeSet<>();
    add("stray", part.strays(), all);
    add("carried", part.carried(), all);
    return all;
  }

  private static void add(String side, Side part, SortedSet<String> all) {
    part.forEachPerson((number, person) -> all.add(side + " " + number + " " + person));
    part.forEachSign((sign, number) -> all.add(side + " " + number + " " + sign));
  }
}
