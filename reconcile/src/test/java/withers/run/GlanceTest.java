package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.cases.Settled;
import withers.cases.Settlement;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.custody.Cast;
import withers.custody.Discretion;
import withers.damage.CutNumbers;
import withers.history.Animal;
import withers.history.History;
import withers.history.Scope;
import withers.history.Sources;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.log.LogSnapshot;
import withers.registration.Registries;
import withers.rule.Rules;
import withers.rule.Sight;
import withers.settled.Settlements;
import withers.slip.Candidates;
import withers.slip.Side;
import withers.supply.Supplies;
import withers.world.AnyEvents;
import withers.world.Chips;
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

  /** An animal whose adopter is registered; all of invented records. */
  private static final String ADOPTED =
      """
      shelter 2026-09-30 C1 s1 went/outcome 2026-02-01 adoption own Ada/1
      north 2026-09-30 C1 n1 registered 2026-02-05 Ada
      south 2026-09-30
      """;

  private static final ChipNumber ANY = ChipNumber.iso(999, 1);
  private static final List<String> NAMED =
      List.of("Ada", "Ada'", "AdaMoved", "AdaMarried", "Bo", "BoMoved", "Cy");

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

  @Test
  void an_adopter_who_is_registered_is_clear_at_a_glance() {
    assertThat(seen(ADOPTED)).containsExactly("clear at a glance");
  }

  /** Of the household; or with the keeper's phone, whoever it is. */
  @ParameterizedTest
  @ValueSource(strings = {"Adas", "Nameless0101"})
  void whoever_leads_to_the_adopter_may_be_registered(String registered) {
    String lines = ADOPTED.replace("2026-02-05 Ada", "2026-02-05 " + registered);

    assertThat(seen(lines)).containsExactly("clear at a glance");
  }

  /** Each adds something that few random worlds hold; without it a glance would say clear. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        // somebody else comes with it, months apart
        ADOPTED
            + """
            clinic 2026-09-30 C1 p1 visit 2026-05-01 Cy
            clinic 2026-09-30 C1 p2 visit 2026-08-01 Cy
            """,
        // the shelter knows its client by newer details
        """
        shelter 2026-08-31 C1 s1 went/outcome 2026-02-01 adoption own Ada/1
        shelter 2026-09-30 C1 s2 visit 2026-01-15 AdaMoved/1
        north 2026-09-30 C1 n1 registered 2026-02-05 Ada
        south 2026-09-30
        """,
        // whoever is registered is only a name, where phones are filled in
        """
        shelter 2026-09-30 C1 s1 went/outcome 2026-02-01 adoption own AdaNameOnly/1
        north-filled 2026-09-30 C1 n1 registered 2026-02-05 AdaNameOnly
        south 2026-09-30
        """,
        // the shelter has it, and somebody else comes with it, months apart
        """
        shelter 2026-09-30 C1 s1 went/intake 2026-02-01 intake-surrender Ada own
        clinic 2026-09-30 C1 p1 visit 2026-05-01 Cy
        clinic 2026-09-30 C1 p2 visit 2026-08-01 Cy
        north 2026-09-30
        south 2026-09-30
        """
      })
  void a_glance_is_unsure_where_the_rules_have_something_to_say(String lines) {
    assertThat(seen(lines)).containsExactly("unsure, and not clear");
  }

  /** What a glance and the rules say of the first number. */
  private static List<String> seen(String lines) {
    World world = World.of(lines);
    LogSnapshot log = world.log().snapshot();
    Scope scope = Scope.asOf(RandomWorld.ROUNDS.get(3).plusDays(1));
    Cast cast = new Cast(world.people(), Sources.of(log.markers(), scope));
    Rules rules = rules(log, cast);
    return alone(log, cast)
        .filter(history -> history.chip().equals(Chips.chip(1)))
        .map(history -> seen(history, rules))
        .toList();
  }

  private static String seen(History history, Rules rules) {
    Candidates.Part aside = new Candidates.Part();
    if (rules.look(history, aside) != Sight.UNSURE) {
      return "clear at a glance";
    }
    boolean isClear = rules.assess(Animal.of(List.of(history)), aside).isClear();
    return isClear ? "unsure, and clear" : "unsure, and not clear";
  }

  private static Rules rules(LogSnapshot log, Cast cast) {
    return new Rules(
        new Registries(World.DIRECTORY, cast, World.PERIODS), Supplies.read(log, cast));
  }

  /** Some of the people are said to be one, or others, than their details say; some are silent. */
  @Test
  void a_glance_heeds_what_people_settled_and_what_is_confidential() {
    Counted counted = new Counted();
    for (long seed = 0; seed < SEEDS; seed++) {
      World world = World.of(RandomWorld.lines(seed, CHIPS, 0));
      Random random = new Random(seed);
      Scope scope = Scope.asOf(RandomWorld.ROUNDS.get(3).plusDays(1));
      look(
          world,
          scope,
          settled(world, random),
          confidential(world, random),
          "seed " + seed,
          counted);
    }
    assertThat(counted.clear).isPositive();
  }

  private static Settlements settled(World world, Random random) {
    List<Settled> all =
        IntStream.range(0, 1 + random.nextInt(2))
            .mapToObj(number -> settled(number, world, random))
            .toList();
    return Settlements.of(all, RandomWorld.ROUNDS.get(3));
  }

  private static Settled settled(long number, World world, Random random) {
    LocalDate day = RandomWorld.ROUNDS.get(0);
    return new Settled(
        number,
        new CaseKey("any", new Anchor.Chip(ANY), new OrganisationId("any"), "k" + number),
        day,
        day,
        Optional.empty(),
        "coordinator",
        "invented",
        new Settlement.OfPeople(
            client(world, random),
            client(world, random),
            Settlement.Relation.values()[random.nextInt(Settlement.Relation.values().length)]));
  }

  private static Settlement.Client client(World world, Random random) {
    String who = NAMED.get(random.nextInt(NAMED.size()));
    return new Settlement.Client(world.reference(who), new SourceId("clinic"), Optional.empty());
  }

  private static Discretion confidential(World world, Random random) {
    return random.nextInt(3) > 0
        ? Discretion.NONE
        : new Discretion(
            Set.of(world.reference(NAMED.get(random.nextInt(NAMED.size())))), Set.of(), Set.of());
  }

  private static final class Counted {
    private int clear;
    private int strays;
    private int unsure;
  }

  private static void look(World world, Scope scope, String seed, Counted counted) {
    look(world, scope, Settlements.NONE, Discretion.NONE, seed, counted);
  }

  private static void look(
      World world,
      Scope scope,
      Settlements settlements,
      Discretion discretion,
      String seed,
      Counted counted) {
    LogSnapshot log = world.log().snapshot();
    Sources sources = Sources.of(log.markers(), scope);
    Cast cast = new Cast(world.people(), sources, settlements, discretion);
    Rules rules = rules(log, cast);
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
    if (rules.look(history, atAGlance) == Sight.UNSURE) {
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
