package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.codec.finding.CanonicalFindings;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.history.Scope;
import withers.log.EventLog;
import withers.world.AnyEvents;
import withers.world.Export;
import withers.world.RandomWorld;
import withers.world.World;

/**
 * Findings depend on the set of exports: never on the order or number of imports, nor on batches or
 * threads.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LawOfTheFoldTest {

  private static final int SEEDS = 200;
  private static final int CHIPS = 12;
  private static final Scope SCOPE = Scope.asOf(LocalDate.of(2026, 10, 1));

  @Test
  void the_worlds_hold_every_kind_of_finding_and_animals_without_any() {
    List<Outcome> outcomes =
        LongStream.range(0, SEEDS).mapToObj(seed -> judge(world(seed), SCOPE)).toList();

    List<Finding> findings = outcomes.stream().flatMap(o -> o.findings().stream()).toList();
    assertThat(findings.stream().map(f -> f.kind().word()).collect(Collectors.toSet()))
        .isEqualTo(
            Stream.of(FindingKind.values()).map(FindingKind::word).collect(Collectors.toSet()));
    assertThat(outcomes.stream().mapToLong(Outcome::animals).sum())
        .isGreaterThan(findings.stream().filter(f -> !f.isOfRecord()).count() * 3 / 2);
  }

  @Test
  void neither_order_nor_repetition_nor_cuts_nor_threads_change_a_byte() {
    for (long seed = 0; seed < SEEDS; seed++) {
      World world = world(seed);
      Outcome straight = judge(world, SCOPE);
      Random random = new Random(seed);

      Outcome mixed =
          world.reconciliation(1 + random.nextInt(2)).judge(mixed(world, random).snapshot(), SCOPE);

      assertThat(canonical(mixed)).as("seed " + seed).isEqualTo(canonical(straight));
      assertThat(mixed.notJudged()).as("seed " + seed).isEqualTo(straight.notJudged());
      assertThat(mixed.animals()).as("seed " + seed).isEqualTo(straight.animals());
    }
  }

  @Test
  void the_law_holds_for_events_that_make_no_sense_too() {
    for (long seed = 0; seed < SEEDS; seed++) {
      World world = AnyEvents.world(seed, 60);
      Outcome straight = judge(world, SCOPE);
      EventLog mixed = mixed(world, new Random(seed));

      Outcome again = world.reconciliation(2).judge(mixed.snapshot(), SCOPE);

      assertThat(canonical(again)).as("seed " + seed).isEqualTo(canonical(straight));
      assertThat(again.notJudged()).as("seed " + seed).isEqualTo(straight.notJudged());
    }
  }

  /** Exports in any order, some of them twice, events in any order and some twice, cut anyhow. */
  private static EventLog mixed(World world, Random random) {
    List<Export> exports = new ArrayList<>(world.exports());
    exports.addAll(world.exports().stream().filter(e -> random.nextInt(4) == 0).toList());
    Collections.shuffle(exports, random);
    return World.log(
        exports.stream().map(export -> World.mixed(export, random)).toList(),
        1 + random.nextInt(7));
  }

  @Test
  void one_export_may_come_as_several_files_of_one_date() {
    for (long seed = 0; seed < 50; seed++) {
      World world = world(seed);
      Random random = new Random(seed);
      List<Export> pieces =
          world.exports().stream().flatMap(export -> World.cut(export, random)).toList();

      Outcome cut = world.reconciliation(1).judge(World.log(pieces, 3).snapshot(), SCOPE);

      assertThat(canonical(cut)).as("seed " + seed).isEqualTo(canonical(judge(world, SCOPE)));
    }
  }

  @Test
  void what_was_known_by_a_day_is_what_a_log_of_the_exports_up_to_it_tells() {
    for (long seed = 0; seed < SEEDS; seed++) {
      World world = world(seed);
      LocalDate known = RandomWorld.ROUNDS.get((int) (seed % 4));
      List<Export> upTo =
          world.exports().stream().filter(export -> !export.date().isAfter(known)).toList();

      Outcome lookedBack = judge(world, new Scope(SCOPE.asOf(), Optional.of(known)));
      Outcome then = world.reconciliation(1).judge(World.log(upTo, 5).snapshot(), SCOPE);

      assertThat(canonical(lookedBack)).as("seed " + seed).isEqualTo(canonical(then));
      assertThat(lookedBack.notJudged()).as("seed " + seed).isEqualTo(then.notJudged());
    }
  }

  @Test
  void a_week_later_everything_is_found_a_week_later() {
    for (long seed = 0; seed < 50; seed++) {
      World now = World.of(RandomWorld.lines(seed, CHIPS, 0));
      World later = World.of(RandomWorld.lines(seed, CHIPS, 7));

      Outcome shifted = judge(later, Scope.asOf(SCOPE.asOf().plusDays(7)));

      assertThat(shifted.findings().stream().map(LawOfTheFoldTest::undated))
          .as("seed " + seed)
          .isEqualTo(judge(now, SCOPE).findings().stream().map(LawOfTheFoldTest::undated).toList());
    }
  }

  private static List<Object> undated(Finding finding) {
    return List.of(
        finding.caseKey(),
        finding.priority(),
        finding.fields(),
        finding.evidence().stream().map(e -> List.of(e.part(), e.key(), e.who())).toList());
  }

  @Test
  void an_organisation_that_has_nothing_to_do_with_an_animal_changes_nothing_about_it() {
    for (long seed = 0; seed < 50; seed++) {
      World world = world(seed);
      String before = canonical(judge(world, SCOPE));
      String unrelated =
          "cattery 2026-09-30 C2000000150 c1 went 2026-01-01 intake-surrender Bo own\n"
              + "desk 2026-09-30 C2000000151 d1 lost 2026-09-20 Cy";
      World.of(unrelated).exports().forEach(world::add);

      assertThat(canonical(judge(world, SCOPE))).as("seed " + seed).isEqualTo(before);
    }
  }

  /** In every second world the north's disappearances of August are withheld. */
  private static World world(long seed) {
    World world = World.of(RandomWorld.lines(seed, CHIPS, 0));
    return seed % 2 == 0 ? world : world.withholding("north", RandomWorld.ROUNDS.get(2));
  }

  private static Outcome judge(World world, Scope scope) {
    return world.judge(scope);
  }

  private static String canonical(Outcome outcome) {
    return CanonicalFindings.of(outcome.findings()).text();
  }
}
