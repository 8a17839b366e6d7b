package withers.scorecard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.codec.scorecard.FrozenScorecard;
import withers.log.EventLog;
import withers.world.Export;
import withers.world.RandomWorld;
import withers.world.World;

/** A scorecard depends on the set of exports, and on those alone that speak of its patients. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LawOfTheScorecardTest {
  private static final int SEEDS = 100;
  private static final int CHIPS = 12;

  private static World world(long seed) {
    return World.of(RandomWorld.lines(seed, CHIPS, 0));
  }

  private static String frozen(Scorecard card) {
    return FrozenScorecard.of(card).text();
  }

  @Test
  void the_worlds_hold_patients_of_many_kinds() {
    Set<Reach> told = EnumSet.noneOf(Reach.class);
    for (long seed = 0; seed < SEEDS; seed++) {
      Scores.of(world(seed)).patients().forEach(patient -> told.add(patient.reach()));
    }
    assertThat(told)
        .contains(
            Reach.REACHABLE,
            Reach.NOT_REGISTERED,
            Reach.NO_DETAILS,
            Reach.NOT_CONFIRMED,
            Reach.OTHER_DETAILS,
            Reach.KEEPER_NOT_KNOWN,
            Reach.REGISTRY_NOT_KNOWN,
            Reach.IN_CARE,
            Reach.NO_NUMBER);
  }

  @Test
  void neither_order_nor_repetition_nor_threads_change_a_byte() {
    for (long seed = 0; seed < SEEDS; seed++) {
      World world = world(seed);
      EventLog mixed = mixed(world, new Random(seed));

      Scorecard again = Scores.of(world, mixed.snapshot(), 2, List.of());

      assertThat(frozen(again)).as("seed " + seed).isEqualTo(frozen(Scores.of(world)));
    }
  }

  private static EventLog mixed(World world, Random random) {
    List<Export> exports = new ArrayList<>(world.exports());
    exports.addAll(world.exports().stream().filter(e -> random.nextInt(4) == 0).toList());
    Collections.shuffle(exports, random);
    return World.log(
        exports.stream().map(export -> World.mixed(export, random)).toList(),
        1 + random.nextInt(7));
  }

  @Test
  void organisations_that_know_none_of_the_patients_change_nothing() {
    String patients =
        """
        clinic  2026-08-15 C100 p1 visit 2026-08-01 Ada
        clinic  2026-08-15 C102 p2 visit 2026-08-01 Bo
        north   2026-09-30 C100 n1 registered 2026-03-02 Ada
        """;
    String others =
        """
        vale    2026-09-15 C104 v1 visit 2026-08-01 Ada
        shelter 2026-09-15 C106 s1 went 2026-03-01 adoption own Bo
        kennels 2026-09-15 C108 k1 went 2026-03-01 sale own Cy
        south   2026-09-15 C210 z1 registered 2026-03-02 Dee
        """;

    assertThat(frozen(Scores.of(World.of(patients + others), "clinic")))
        .isEqualTo(frozen(Scores.of(World.of(patients), "clinic")));
  }

  @Test
  void a_second_clinic_that_sends_patients_is_in_the_group_unless_one_is_named() {
    World world =
        World.of(
            """
            clinic 2026-08-15 C100 p1 visit 2026-08-01 Ada
            vale   2026-08-15 C102 v1 visit 2026-08-01 Bo
            north  2026-09-30
            """);

    assertThat(Scores.of(world).patients()).hasSize(2);
    assertThat(Scores.of(world, "vale").patients()).hasSize(1);
  }

  @Test
  void nothing_of_people_is_kept() {
    for (long seed = 0; seed < SEEDS; seed++) {
      String frozen = frozen(Scores.of(world(seed))).toLowerCase(Locale.ROOT);

      assertThat(frozen)
          .as("seed " + seed)
          .doesNotContain("stone", "brook", "lind", "marsh", "holt", "foster")
          .doesNotContain("555", "@", "quay", "mill", "weir", "ford");
    }
  }

  @Test
  void of_a_client_who_was_forgotten_it_is_not_known() {
    World world =
        World.of(
            """
            clinic 2026-08-15 C100 p1 visit 2026-08-01 Ada
            north  2026-09-30 C100 n1 registered 2026-03-02 Ada'
            clinic 2026-08-15 C102 p2 visit 2026-08-01 Bo
            north  2026-09-30 C102 n2 registered 2026-03-02 BoMoved
            """);
    world.vault().forget(List.of(world.reference("Ada"), world.reference("BoMoved")), List.of());

    assertThat(Scores.of(world, "clinic").patients())
        .extracting(Patient::reach)
        .containsExactly(Reach.FORGOTTEN, Reach.FORGOTTEN);
  }
}
