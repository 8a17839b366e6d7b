package withers.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.fact.Fact;
import withers.fact.Slot;
import withers.log.LogSnapshot;
import withers.run.AnimalReader;
import withers.world.Chips;
import withers.world.World;

/** The sentences about statements in docs/findings.md. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class FoldTest {
  private static final LocalDate AS_OF = LocalDate.of(2026, 10, 1);

  @Test
  void a_later_statement_corrects_an_earlier_one_of_its_slot() {
    assertThat(
            inEffect(
                """
                shelter 2026-07-31 C1 s1 went 2026-02-01 adoption own Ada
                shelter 2026-08-31 C1 s1 went 2026-03-01 adoption own Ada
                """))
        .containsExactly("MOVEMENT 2026-03-01 stated 2026-08-31");
  }

  @Test
  void visits_stand_beside_each_other() {
    assertThat(
            inEffect(
                """
                clinic 2026-08-31 C1 p1 visit 2026-03-01 Ada
                clinic 2026-07-31 C1 p1 visit 2026-02-01 Ada
                """))
        .containsExactly(
            "VISIT 2026-02-01 stated 2026-07-31", "VISIT 2026-03-01 stated 2026-08-31");
  }

  @Test
  void equal_statements_that_follow_each_other_are_one_dated_by_the_first() {
    assertThat(
            inEffect(
                """
                north 2026-06-30 C1 n1 registered 2026-01-01 Ada
                north 2026-07-31 C1 n1 registered 2026-01-01 Ada
                north 2026-08-31 C1 n1 registered 2026-01-01 Bo
                north 2026-09-30 C1 n1 registered 2026-01-01 Ada
                """))
        .containsExactly(
            "REGISTRATION 2026-01-01 stated 2026-06-30",
            "REGISTRATION 2026-01-01 stated 2026-08-31",
            "REGISTRATION 2026-01-01 stated 2026-09-30");
  }

  @Test
  void a_corrected_statement_that_was_said_before_counts_from_when_it_was_said_last_anew() {
    assertThat(
            inEffect(
                """
                shelter 2026-06-30 C1 s1 went 2026-02-01 adoption own Ada
                shelter 2026-07-31 C1 s1 went 2026-03-01 adoption own Ada
                shelter 2026-08-31 C1 s1 went 2026-02-01 adoption own Ada
                shelter 2026-09-30 C1 s1 went 2026-02-01 adoption own Ada
                """))
        .containsExactly("MOVEMENT 2026-02-01 stated 2026-08-31");
  }

  @Test
  void a_withdrawal_takes_back_all_earlier_statements_of_the_slot_and_no_later_ones() {
    assertThat(
            inEffect(
                """
                clinic 2026-06-30 C1 p1 visit 2026-02-01 Ada
                clinic 2026-07-31 C1 p1 visit 2026-03-01 Ada
                clinic 2026-08-31 C1 p1 withdrawn visit
                clinic 2026-09-30 C1 p1 visit 2026-04-01 Ada
                """))
        .containsExactly("VISIT 2026-04-01 stated 2026-09-30");
  }

  @Test
  void on_one_date_a_withdrawal_comes_before_a_statement() {
    assertThat(
            inEffect(
                """
                clinic 2026-07-31 C1 p1 visit 2026-02-01 Ada
                clinic 2026-08-31 C1 p1 visit 2026-03-01 Ada
                clinic 2026-08-31 C1 p1 corrected visit
                """))
        .containsExactly("VISIT 2026-03-01 stated 2026-08-31");
  }

  @Test
  void a_withdrawal_concerns_its_own_source_record_slot_and_number_only() {
    assertThat(
            inEffect(
                """
                clinic 2026-07-31 C1 p1 visit 2026-02-01 Ada
                vale   2026-08-31 C1 p1 withdrawn visit
                clinic 2026-08-31 C1 p2 withdrawn visit
                clinic 2026-08-31 C1 p1 withdrawn scan
                clinic 2026-08-31 C2 p1 withdrawn visit
                """))
        .containsExactly("VISIT 2026-02-01 stated 2026-07-31");
  }

  @Test
  void a_statement_without_a_day_speaks_of_the_day_on_which_it_was_first_stated() {
    assertThat(
            inEffect(
                """
                clinic 2026-07-31 C1 p1 visit - Ada
                clinic 2026-08-31 C1 p1 visit - Ada
                """))
        .containsExactly("VISIT 2026-07-31 stated 2026-07-31");
  }

  @Test
  void as_of_a_day_later_days_are_left_out_but_a_corrected_day_stays_corrected() {
    String lines =
        """
        shelter 2026-03-31 C1 s1 went 2026-02-01 adoption own Ada
        shelter 2026-08-31 C1 s1 went 2026-05-01 adoption own Ada
        clinic  2026-08-31 C1 p1 visit 2026-01-01 Ada
        """;

    assertThat(inEffect(lines, Scope.asOf(LocalDate.of(2026, 4, 15))))
        .containsExactly("VISIT 2026-01-01 stated 2026-08-31");
  }

  @Test
  void as_of_a_day_a_registry_s_later_exports_are_left_out() {
    String lines =
        """
        north 2026-03-31 C1 n1 registered 2026-01-01 Bo
        north 2026-08-31 C1 n1 registered 2026-01-01 Ada
        """;

    assertThat(inEffect(lines, Scope.asOf(LocalDate.of(2026, 4, 15))))
        .containsExactly("REGISTRATION 2026-01-01 stated 2026-03-31");
  }

  @Test
  void known_by_a_day_later_exports_are_left_out() {
    String lines =
        """
        shelter 2026-03-31 C1 s1 went 2026-02-01 adoption own Ada
        shelter 2026-08-31 C1 s1 went 2026-05-01 adoption own Ada
        """;
    Scope scope = new Scope(AS_OF, Optional.of(LocalDate.of(2026, 8, 30)));

    assertThat(inEffect(lines, scope)).containsExactly("MOVEMENT 2026-02-01 stated 2026-03-31");
  }

  @Test
  void a_record_that_disappeared_is_unlisted_until_it_is_stated_again() {
    assertThat(listed("north 2026-08-31 C1 n1 gone")).isFalse();
    assertThat(
            listed("north 2026-08-31 C1 n1 gone\nnorth 2026-09-30 C1 n1 registered 2026-01-01 Ada"))
        .isTrue();
  }

  @Test
  void on_one_date_presence_wins_over_disappearance() {
    assertThat(
            listed("north 2026-08-31 C1 n1 gone\nnorth 2026-08-31 C1 n1 registered 2026-01-01 Ada"))
        .isTrue();
  }

  @Test
  void a_disappearance_on_a_date_of_presence_changes_nothing() {
    String gone = "north 2026-08-31 C1 n1 gone\nnorth 2026-08-31 C1 n1 withdrawn registration\n";
    String again = "north 2026-08-31 C1 n1 is dog Rook";

    assertThat(animal(World.of(REGISTERED + gone + again)).turned()).isEmpty();
    assertThat(registrations(World.of(REGISTERED + gone + again))).isOne();
  }

  @Test
  void a_disappearance_that_is_taken_back_on_its_date_changes_nothing() {
    String gone = "north 2026-08-31 C1 n1 gone\nnorth 2026-08-31 C1 n1 withdrawn registration\n";
    String still = "north 2026-08-31 C1 n1 still";
    String later = "\nnorth 2026-09-30 C1 n1 gone";

    assertThat(listed(gone + still)).isTrue();
    assertThat(animal(World.of(REGISTERED + gone + still)).turned()).isEmpty();
    assertThat(registrations(World.of(REGISTERED + gone + still))).isOne();
    assertThat(listed(gone + still + later)).isFalse();
    assertThat(turned(gone + still + later)).contains(LocalDate.of(2026, 9, 30));
  }

  @Test
  void what_was_said_under_an_old_key_is_the_new_key_s() {
    String lines =
        """
        clinic 2026-07-31 C1 p1 visit 2026-02-01 Ada
        clinic 2026-08-31 C1 p1 rekeyed q1
        clinic 2026-08-31 C1 q1 visit 2026-02-01 Ada
        clinic 2026-09-30 C1 q1 gone
        """;

    assertThat(animal(World.of(lines)).statements())
        .extracting(s -> s.key().value(), Statement::firstStated, Statement::listed)
        .containsExactly(tuple("q1", LocalDate.of(2026, 7, 31), false));
  }

  @Test
  void a_record_may_change_its_key_again_and_another_one_may_take_its_first_key() {
    String lines =
        """
        clinic 2026-07-31 C1 p1 visit 2026-02-01 Ada
        clinic 2026-08-31 C1 p1 rekeyed q1
        clinic 2026-09-30 C1 q1 rekeyed r1
        clinic 2026-09-30 C1 p1 visit 2026-09-01 Ada
        clinic 2026-10-31 C1 r1 gone
        """;

    assertThat(animal(World.of(lines)).statements())
        .extracting(s -> s.key().value(), Statement::listed)
        .containsExactlyInAnyOrder(tuple("r1", false), tuple("p1", true));
  }

  @Test
  void any_slot_of_the_record_keeps_it_listed() {
    assertThat(listed("north 2026-08-31 C1 n1 gone\nnorth 2026-09-30 C1 n1 is dog Rook")).isTrue();
    assertThat(listed("north 2026-08-31 C1 n1 gone\nnorth 2026-09-30 C1 n2 is dog Rook")).isFalse();
  }

  @Test
  void a_withheld_disappearance_has_no_effect_before_the_next_full_export() {
    assertThat(listedThough("north 2026-08-31 C1 n1 gone", LocalDate.of(2026, 8, 31))).isTrue();
  }

  @Test
  void a_withheld_disappearance_takes_effect_at_the_next_full_export() {
    String lines = "north 2026-08-31 C1 n1 gone\nnorth 2026-09-30";

    assertThat(listedThough(lines, LocalDate.of(2026, 8, 31))).isFalse();
    assertThat(turned(lines)).contains(LocalDate.of(2026, 9, 30));
  }

  @Test
  void a_withheld_disappearance_is_void_when_the_record_is_back() {
    String lines = "north 2026-08-31 C1 n1 gone\nnorth 2026-09-30 C1 n1 registered 2026-01-01 Ada";

    assertThat(listedThough(lines, LocalDate.of(2026, 8, 31))).isTrue();
    assertThat(turned(lines)).isEmpty();
  }

  @Test
  void a_confirmed_disappearance_takes_effect_at_its_own_date() {
    LocalDate date = LocalDate.of(2026, 8, 31);
    World world = World.of(REGISTERED + "north 2026-08-31 C1 n1 gone");

    world.withholding("north", date).confirming("north", date);

    assertThat(animal(world).statements().get(0).listed()).isFalse();
    assertThat(animal(world).turned()).contains(date);
  }

  @Test
  void a_cancellation_at_a_withheld_date_waits_as_the_disappearance_does() {
    String gone = "north 2026-08-31 C1 n1 gone\nnorth 2026-08-31 C1 n1 withdrawn registration\n";
    LocalDate date = LocalDate.of(2026, 8, 31);

    assertThat(registrations(World.of(REGISTERED + gone))).isZero();
    assertThat(registrations(World.of(REGISTERED + gone).withholding("north", date))).isOne();
    assertThat(
            registrations(
                World.of(REGISTERED + gone + "north 2026-09-30").withholding("north", date)))
        .isZero();
    assertThat(
            registrations(
                World.of(REGISTERED + gone).withholding("north", date).confirming("north", date)))
        .isZero();
  }

  private static long registrations(World world) {
    return animal(world).statements().stream()
        .filter(statement -> statement.slot() == Slot.REGISTRATION)
        .count();
  }

  @Test
  void a_record_goes_off_the_list_when_it_is_missing_for_the_first_time_since_it_was_stated() {
    String gone = "north 2026-08-31 C1 n1 gone\nnorth 2026-09-30 C1 n1 gone";

    assertThat(animal(World.of(REGISTERED + gone)).turned()).contains(LocalDate.of(2026, 8, 31));
    assertThat(turned(gone)).contains(LocalDate.of(2026, 9, 30));
    assertThat(animal(World.of(REGISTERED + "north 2026-06-30 C1 n1 gone\n" + gone)).turned())
        .contains(LocalDate.of(2026, 8, 31));
  }

  @Test
  void a_withdrawal_is_a_change_only_where_it_takes_something_back() {
    String lines =
        """
        clinic 2026-07-31 C1 p1 visit 2026-02-01 Ada
        clinic 2026-08-15 C1 p1 withdrawn visit
        clinic 2026-08-31 C1 p1 withdrawn visit
        """;

    assertThat(animal(World.of(lines)).turned()).contains(LocalDate.of(2026, 8, 15));
  }

  @Test
  void what_is_taken_back_of_a_damaged_number_is_a_change_for_its_animal() {
    String lines =
        """
        north  2026-07-31 C1 n1 registered 2026-01-01 Ada
        clinic 2026-07-31 ?C1 p1 visit 2026-02-01 Ada
        clinic 2026-08-31 ?C1 p1 withdrawn visit
        """;

    assertThat(animal(World.of(lines)).turned()).contains(LocalDate.of(2026, 8, 31));
  }

  @Test
  void an_animal_is_read_whole_from_the_number_that_a_damaged_one_is_paired_with() {
    String lines =
        """
        clinic 2026-07-31 C1 p1 visit 2026-02-01 Ada
        clinic 2026-07-31 ?C2,C3 p1 paired C1
        north  2026-08-31 C3 n1 registered 2026-01-01 Ada
        """;

    Animal animal = animal(World.of(lines));

    assertThat(animal.chips()).containsExactly(Chips.chip(1), Chips.chip(3));
    assertThat(animal.stating(Fact.PairedWith.class))
        .extracting(Statement::chip, Statement::firstStated)
        .containsExactly(tuple(Chips.chip(3), LocalDate.of(2026, 8, 31)));
  }

  private static final String REGISTERED = "north 2026-07-31 C1 n1 registered 2026-01-01 Ada\n";

  private static boolean listed(String more) {
    return animal(World.of(REGISTERED + more)).statements().get(0).listed();
  }

  private static boolean listedThough(String more, LocalDate withheld) {
    World world = World.of(REGISTERED + more).withholding("north", withheld);
    return animal(world).statements().get(0).listed();
  }

  private static Optional<LocalDate> turned(String more) {
    World world = World.of(REGISTERED + more).withholding("north", LocalDate.of(2026, 8, 31));
    return animal(world).turned();
  }

  private static List<String> inEffect(String lines) {
    return inEffect(lines, Scope.asOf(AS_OF));
  }

  private static List<String> inEffect(String lines, Scope scope) {
    return animal(World.of(lines), scope).statements().stream()
        .map(s -> "%s %s stated %s".formatted(s.slot(), s.day(), s.firstStated()))
        .sorted()
        .toList();
  }

  private static Animal animal(World world) {
    return animal(world, Scope.asOf(AS_OF));
  }

  private static Animal animal(World world, Scope scope) {
    LogSnapshot log = world.log().snapshot();
    return new AnimalReader(log, Sources.of(log.markers(), scope)).read(Chips.chip(1));
  }
}
