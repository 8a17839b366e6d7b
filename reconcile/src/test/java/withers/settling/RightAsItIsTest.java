package withers.settling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.finding.FindingKind;
import withers.finding.RunResult;
import withers.history.Scope;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.world.Chips;

/**
 * Ada has the dog, and the shelter stays registered: somebody looked into it, and it shall be so.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class RightAsItIsTest {

  private static final String ADOPTED =
      """
      shelter 2026-08-31 C100 s1 went 2026-03-01 adoption own Ada
      north   2026-08-31 C100 n1 registered 2025-01-01 Shelter
      """;
  private static final CaseKey BEHIND = key("contact-behind", "s1");

  private final Months months = new Months().imported(ADOPTED);
  private final RunResult september = months.run("2026-09-01");

  private static CaseKey key(String rule, String record) {
    return new CaseKey(
        rule, new Anchor.Chip(Chips.chip(100)), new OrganisationId("shelter"), record);
  }

  private void settled(String day) {
    assertThat(september.opened()).containsExactly(BEHIND);
    assertThat(months.settle(september, BEHIND, Answer.RIGHT_AS_IT_IS, day)).isTrue();
  }

  @Test
  void what_was_found_right_is_not_listed_again_and_counted_as_settled_by_a_person() {
    settled("2026-09-02");

    RunResult october = months.imported("north 2026-09-30").run("2026-10-01");
    RunResult november = months.imported("north 2026-10-31").run("2026-11-01");

    assertThat(october.findings()).isEmpty();
    assertThat(october.settled()).containsExactly(BEHIND);
    assertThat(october.closed()).isEmpty();
    assertThat(october.stillOpen()).isEmpty();
    assertThat(november.findings()).isEmpty();
    assertThat(november.settled()).containsExactly(BEHIND);
  }

  @Test
  void the_same_day_s_run_heeds_it_too() {
    settled("2026-09-01");

    RunResult again = months.run("2026-09-01");

    assertThat(again.id()).isNotEqualTo(september.id());
    assertThat(again.findings()).isEmpty();
    assertThat(again.settled()).containsExactly(BEHIND);
  }

  @Test
  void it_hides_nothing_that_is_less_pressing() {
    months.imported("clinic 2026-09-01 C100 p1 scanned 2026-08-30 not-detected");
    settled("2026-09-02");

    RunResult october = months.run("2026-09-03");

    assertThat(october.findings())
        .extracting(finding -> finding.kind())
        .containsExactly(FindingKind.NOT_DETECTED);
  }

  @Test
  void it_comes_back_as_new_when_the_registration_changes() {
    settled("2026-09-02");
    months.imported("north 2026-09-30").run("2026-10-01");

    RunResult november =
        months.imported("north 2026-10-31 C100 n1 registered 2025-01-01 Cattery").run("2026-11-01");

    assertThat(november.opened()).containsExactly(BEHIND);
    assertThat(november.settled()).isEmpty();
  }

  @Test
  void it_comes_back_when_somebody_else_has_the_animal() {
    settled("2026-09-02");

    RunResult november =
        months
            .imported(
                """
                shelter 2026-10-31 C100 s1 went 2026-03-01 adoption own Bo
                north   2026-10-31
                """)
            .run("2026-11-01");

    assertThat(november.findings()).hasSize(1);
    assertThat(november.stillOpen()).containsExactly(BEHIND);
  }

  @Test
  void it_stays_settled_when_the_keeper_s_details_are_written_otherwise_or_the_keeper_moves() {
    settled("2026-09-02");

    for (String person : new String[] {"Ada'", "AdaMoved"}) {
      RunResult november =
          months
              .imported(
                  "shelter 2026-10-31 C100 s1 went 2026-03-01 adoption own "
                      + person
                      + "\nnorth 2026-10-31")
              .run("2026-11-01");

      assertThat(november.findings()).as(person).isEmpty();
      assertThat(november.settled()).as(person).containsExactly(BEHIND);
    }
  }

  @Test
  void it_comes_back_when_its_end_has_passed() {
    months.settle(
        september, BEHIND, Answer.RIGHT_AS_IT_IS, "2026-09-02", Optional.of("2026-10-01"));
    months.imported("north 2026-09-30");

    assertThat(months.run("2026-10-01").findings()).isEmpty();
    assertThat(months.run("2026-10-02").opened()).containsExactly(BEHIND);
  }

  @Test
  void it_comes_back_when_it_is_taken_back_and_can_be_settled_again() {
    settled("2026-09-02");
    months.takeBack(BEHIND, "2026-09-03");

    RunResult taken = months.run("2026-09-04");

    assertThat(taken.stillOpen()).containsExactly(BEHIND);
    assertThat(months.settle(taken, BEHIND, Answer.RIGHT_AS_IT_IS, "2026-09-05")).isTrue();
    assertThat(months.run("2026-09-06").settled()).containsExactly(BEHIND);
  }

  @Test
  void a_run_as_of_an_earlier_day_or_by_what_was_known_earlier_knows_nothing_of_it() {
    settled("2026-09-10");
    months.run("2026-09-20");
    LocalDate before = LocalDate.of(2026, 9, 9);

    assertThat(months.run(Scope.asOf(before)).findings()).hasSize(1);
    assertThat(months.run(new Scope(LocalDate.of(2026, 9, 20), Optional.of(before))).findings())
        .hasSize(1);
    assertThat(
            months
                .run(new Scope(LocalDate.of(2026, 9, 20), Optional.of(before.plusDays(1))))
                .findings())
        .isEmpty();
  }

  @Test
  void recording_the_same_again_writes_nothing() {
    settled("2026-09-02");
    int markers = months.log.snapshot().markers().size();

    assertThat(months.settle(september, BEHIND, Answer.RIGHT_AS_IT_IS, "2026-09-02")).isFalse();
    assertThat(months.log.snapshot().markers()).hasSize(markers);
  }

  @Test
  void a_longer_end_can_be_set_while_it_is_settled() {
    months.settle(
        september, BEHIND, Answer.RIGHT_AS_IT_IS, "2026-09-02", Optional.of("2026-09-10"));
    RunResult settled = months.run("2026-09-03");

    months.settle(settled, BEHIND, Answer.RIGHT_AS_IT_IS, "2026-09-03", Optional.of("2027-09-10"));

    assertThat(months.run("2026-09-11").settled()).containsExactly(BEHIND);
  }

  @Test
  void it_goes_with_the_animal_to_a_lower_number_and_with_the_record_to_another_key() {
    settled("2026-09-02");

    RunResult paired =
        months.imported("clinic 2026-09-30 C100 p1 paired C50\nnorth 2026-09-30").run("2026-10-01");
    assertThat(paired.findings()).isEmpty();
    assertThat(paired.settled()).hasSize(1);

    months.imported("shelter 2026-10-01 C100 s1 rekeyed t1");
    months.imported("shelter 2026-10-02 C100 t1 went 2026-03-01 adoption own Ada");
    RunResult rekeyed = months.run("2026-10-03");
    assertThat(rekeyed.findings()).isEmpty();
    assertThat(rekeyed.settled()).hasSize(1);
  }

  @Test
  void a_record_s_follow_up_can_be_settled_until_the_record_is_written_otherwise() {
    CaseKey damaged =
        new CaseKey(
            "number-damaged",
            new Anchor.Source(new SourceId("clinic")),
            new OrganisationId("clinic"),
            "p1");
    RunResult run =
        months.imported("clinic 2026-09-01 ~9.99000E+14 p1 is dog Rook").run("2026-09-02");
    assertThat(run.opened()).containsExactly(damaged);

    months.settle(run, damaged, Answer.RIGHT_AS_IT_IS, "2026-09-02");

    assertThat(months.run("2026-09-03").settled()).contains(damaged);
    months.imported(
        "clinic 2026-09-04 ~9.99000E+14 p1 withdrawn animal\n"
            + "clinic 2026-09-04 ~9.99010E+14 p1 is dog Rook");
    assertThat(months.run("2026-09-05").opened()).contains(damaged);
  }

  @Test
  void what_the_run_did_not_find_can_t_be_settled() {
    months.imported("desk 2026-09-20 C100 d1 found 2026-09-20 -");
    RunResult hidden = months.run("2026-09-21");
    assertThat(hidden.stillOpen()).containsExactly(BEHIND);

    assertThatThrownBy(() -> months.settle(hidden, BEHIND, Answer.RIGHT_AS_IT_IS, "2026-09-21"))
        .isInstanceOf(CannotBeSettledException.class)
        .hasMessage(
            "Expected a follow-up that run %s found, but this one it did not find: settle it when a list shows it",
            hidden.id());
  }

  @Test
  void what_is_hidden_by_something_more_pressing_is_settled_all_the_same() {
    settled("2026-09-02");
    months.imported("desk 2026-09-20 C100 d1 found 2026-09-20 -");

    RunResult found = months.run("2026-09-21");

    assertThat(found.findings())
        .extracting(finding -> finding.kind())
        .containsExactly(FindingKind.FOUND_WAITING);
    assertThat(found.stillOpen()).isEmpty();
    assertThat(found.settled()).containsExactly(BEHIND);
  }
}
