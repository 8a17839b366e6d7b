package withers.settling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.cases.CaseKey;
import withers.finding.Compared;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.RunResult;
import withers.id.OrganisationId;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PeopleSettledTest {

  private static final String SOLD =
      """
      clinic  2026-07-31 C100 p1 visit 2026-03-01 Bo/17
      north   2026-08-31 C100 n1 registered 2025-01-01 Ada
      """;

  private final Months months = new Months().imported(SOLD);
  private final RunResult september = months.run("2026-09-01");
  private final CaseKey behind = september.opened().get(0);

  private void settled(Answer answer, String day) {
    assertThat(behind.rule()).isEqualTo("contact-behind");
    assertThat(months.settle(september, behind, answer, day)).isTrue();
  }

  private static List<FindingKind> kinds(RunResult run) {
    return run.findings().stream().map(Finding::kind).toList();
  }

  @Test
  void a_household_is_acceptable_and_the_follow_up_counts_as_settled_by_a_person() {
    settled(Answer.SAME_HOUSEHOLD, "2026-09-02");

    RunResult run = months.run("2026-09-03");

    assertThat(run.findings()).isEmpty();
    assertThat(run.settled()).containsExactly(behind);
    assertThat(run.closed()).isEmpty();
    assertThat(run.stillOpen()).isEmpty();
  }

  @Test
  void one_person_with_two_names_still_has_details_that_differ() {
    settled(Answer.SAME_PERSON, "2026-09-02");

    RunResult run = months.run("2026-09-03");

    assertThat(kinds(run)).containsExactly(FindingKind.DETAILS_DIFFER);
    assertThat(run.findings().get(0).fields()).contains("name");
    assertThat(run.settled()).containsExactly(behind);
  }

  @Test
  void one_answer_serves_all_animals_on_which_the_two_are_compared() {
    months.imported(
        """
        clinic  2026-09-01 C101 p2 visit 2026-04-01 Bo/17
        north   2026-09-01 C101 n2 registered 2025-01-01 Ada
        """);
    assertThat(months.run("2026-09-02").findings()).hasSize(2);

    settled(Answer.SAME_HOUSEHOLD, "2026-09-02");

    assertThat(months.run("2026-09-03").findings()).isEmpty();
  }

  @Test
  void it_is_heeded_in_every_version_of_the_source_s_client_and_in_no_other() {
    settled(Answer.SAME_HOUSEHOLD, "2026-09-02");
    months.imported(
        """
        clinic  2026-09-03 C101 p2 visit 2026-04-01 BoMoved/17
        clinic  2026-09-03 C102 p3 visit 2026-04-01 Cy/18
        north   2026-09-03 C101 n2 registered 2025-01-01 Ada
        north   2026-09-03 C102 n3 registered 2025-01-01 Ada
        """);

    RunResult run = months.run("2026-09-04");

    assertThat(run.opened()).extracting(CaseKey::recordKey).containsExactly("p3");
  }

  @Test
  void a_separation_ends_a_household() {
    months.settle(
        september, behind, Answer.SAME_HOUSEHOLD, "2026-09-02", Optional.of("2026-09-30"));
    months.imported("north 2026-09-30");

    assertThat(months.run("2026-09-30").findings()).isEmpty();
    assertThat(kinds(months.run("2026-10-01"))).containsExactly(FindingKind.CONTACT_BEHIND);
  }

  @Test
  void of_several_answers_about_two_people_the_last_counts_and_it_can_be_taken_back() {
    settled(Answer.SAME_PERSON, "2026-09-02");
    settled(Answer.SAME_HOUSEHOLD, "2026-09-03");
    assertThat(months.run("2026-09-04").findings()).isEmpty();

    settled(Answer.DIFFERENT_PEOPLE, "2026-09-05");
    assertThat(kinds(months.run("2026-09-06"))).containsExactly(FindingKind.CONTACT_BEHIND);

    settled(Answer.SAME_HOUSEHOLD, "2026-09-07");
    months.takeBack(behind, "2026-09-08");
    assertThat(kinds(months.run("2026-09-09"))).containsExactly(FindingKind.CONTACT_BEHIND);
  }

  @Test
  void people_whom_details_take_for_one_can_be_different() {
    Months others =
        new Months()
            .imported(
                """
                clinic  2026-07-31 C100 p1 visit 2026-03-01 Ada
                north   2026-08-31 C100 n1 registered 2025-01-01 AdaMoved
                """);
    RunResult run = others.run("2026-09-01");
    assertThat(kinds(run)).containsExactly(FindingKind.DETAILS_DIFFER);

    others.settle(run, run.opened().get(0), Answer.DIFFERENT_PEOPLE, "2026-09-02");

    assertThat(kinds(others.run("2026-09-03"))).containsExactly(FindingKind.CONTACT_BEHIND);
  }

  @Test
  void who_was_forgotten_can_t_be_told_whatever_was_settled() {
    settled(Answer.DIFFERENT_PEOPLE, "2026-09-02");
    assertThat(kinds(months.run("2026-09-03"))).containsExactly(FindingKind.CONTACT_BEHIND);

    months.imported("north 2026-09-03");
    months.world().vault().forget(List.of(months.world().reference("Ada")), List.of());

    assertThat(months.run("2026-09-04").findings()).isEmpty();
  }

  @Test
  void two_registrations_of_two_chips_turn_on_those_whom_they_name() {
    Months two =
        new Months()
            .imported(
                """
                clinic  2026-07-31 C100 p1 visit 2026-03-01 Bo
                clinic  2026-07-31 C100 p1 paired C101
                north   2026-08-31 C100 n1 registered 2025-01-01 Bo
                north   2026-08-31 C101 n2 registered 2025-01-01 Ada
                """);
    RunResult run = two.run("2026-09-01");
    assertThat(kinds(run)).containsExactly(FindingKind.CHIPS_DIVERGE);

    two.settle(run, run.opened().get(0), Answer.SAME_HOUSEHOLD, "2026-09-02");

    assertThat(two.run("2026-09-03").findings()).isEmpty();
  }

  @Test
  void a_mistyped_registration_of_somebody_of_the_same_name_is_dropped() {
    Months slip =
        new Months()
            .imported(
                """
                clinic  2026-07-31 C100 p1 visit 2026-03-01 Ada
                north   2026-08-31 C1100 n1 registered 2026-03-05 AdaMoved
                south   2026-08-31
                """);
    RunResult run = slip.run("2026-09-01");
    assertThat(kinds(run)).contains(FindingKind.MISTYPED_REGISTRATION);
    CaseKey mistyped =
        run.opened().stream()
            .filter(key -> key.rule().equals("mistyped-registration"))
            .findFirst()
            .orElseThrow();

    slip.settle(run, mistyped, Answer.DIFFERENT_PEOPLE, "2026-09-02");

    assertThat(kinds(slip.run("2026-09-03")))
        .doesNotContain(FindingKind.MISTYPED_REGISTRATION)
        .contains(FindingKind.UNREGISTERED);
  }

  @Test
  void two_who_were_said_to_be_one_are_looked_for_under_mistyped_numbers() {
    settled(Answer.SAME_PERSON, "2026-09-02");
    months.imported(
        """
        clinic  2026-09-03 C120 p7 visit 2026-03-01 Bo/17
        north   2026-09-03 C1120 n7 registered 2026-03-05 Ada
        """);

    assertThat(kinds(months.run("2026-09-04"))).contains(FindingKind.MISTYPED_REGISTRATION);
  }

  @Test
  void a_question_is_answered_once() {
    Months asked =
        new Months()
            .imported(
                """
                clinic  2026-07-31 C100 p1 visit 2026-03-01 Ada
                north   2026-08-31 C100 n1 registered 2025-01-01 Nameless0109
                """);
    RunResult run = asked.run("2026-09-01");
    CaseKey question = run.questions().get(0).key();

    asked.settle(run, question, Answer.DIFFERENT_PEOPLE, "2026-09-02");

    RunResult again = asked.run("2026-09-03");
    assertThat(again.questions()).isEmpty();
    assertThat(again.settled()).containsExactly(question);
    assertThat(kinds(again)).containsExactly(FindingKind.CONTACT_BEHIND);
  }

  @Test
  void what_turns_on_no_two_people_is_refused() {
    Months shelter =
        new Months()
            .imported(
                """
                shelter 2026-08-31 C100 s1 went 2026-03-01 adoption own Ada
                north   2026-08-31 C100 n1 registered 2025-01-01 Shelter
                """);
    RunResult run = shelter.run("2026-09-01");

    assertThatThrownBy(
            () -> shelter.settle(run, run.opened().get(0), Answer.SAME_HOUSEHOLD, "2026-09-02"))
        .isInstanceOf(CannotBeSettledException.class)
        .hasMessage(
            "Expected a follow-up that turns on two people, but this one does not: \"--as right-as-it-is\" settles any");
  }

  @Test
  void what_turns_on_several_pairs_asks_whose_registration_is_meant() {
    Months several =
        new Months()
            .imported(
                """
                clinic  2026-07-31 C1 p1 visit 2026-03-01 Bo
                north   2026-08-31 C1 n1 registered 2025-01-01 Ada
                south   2026-08-31 C1 s1 registered 2025-01-01 Cy
                """);
    RunResult run = several.run("2026-09-01");
    CaseKey key = run.opened().get(0);
    assertThat(key.rule()).isEqualTo("contact-behind");

    assertThatThrownBy(() -> several.settle(run, key, Answer.SAME_HOUSEHOLD, "2026-09-02"))
        .isInstanceOf(CannotBeSettledException.class)
        .hasMessage(
            "Expected a follow-up that turns on two people, but this one turns on 2 pairs: say with --registry which registration is meant, of north, south; or settle it with \"--as right-as-it-is\"");
    assertThat(
            several.made(
                run,
                key,
                Answer.SAME_HOUSEHOLD,
                Optional.of(new OrganisationId("south")),
                Optional.empty()))
        .isNotNull();
  }

  @Test
  void one_person_with_nothing_to_compare_has_no_details_that_differ() {
    Months months =
        new Months()
            .imported(
                """
                clinic  2026-07-31 C100 p1 visit 2026-03-01 AdaNameOnly
                north   2026-08-31 C100 n1 registered 2026-03-05 Nameless0109
                """);
    RunResult run = months.run("2026-09-01");
    CaseKey question = run.questions().get(0).key();

    months.settle(run, question, Answer.SAME_PERSON, "2026-09-02");

    assertThat(months.run("2026-09-03").findings()).isEmpty();
  }

  @Test
  void what_somebody_found_out_is_not_explained_by_what_the_details_say() {
    settled(Answer.DIFFERENT_PEOPLE, "2026-09-02");
    assertThat(compared(months.run("2026-09-03"))).isPresent();

    settled(Answer.SAME_PERSON, "2026-09-03");
    assertThat(compared(months.run("2026-09-04"))).isEmpty();
  }

  private static Optional<Compared> compared(RunResult run) {
    return run.findings().get(0).registered().get(0).compared();
  }

  @Test
  void of_giver_and_receiver_the_one_who_has_it_is_meant_and_in_every_version() {
    Months sold =
        new Months()
            .imported(
                """
                clinic  2026-07-31 C100 p1 went 2026-03-01 transfer Cy/3 Bo/17
                north   2026-08-31 C100 n1 registered 2025-01-01 Ada
                """);
    RunResult run = sold.run("2026-09-01");
    sold.settle(run, run.opened().get(0), Answer.SAME_HOUSEHOLD, "2026-09-02");
    sold.imported(
        """
        clinic  2026-09-03 C101 p2 visit 2026-04-01 BoMoved/17
        clinic  2026-09-03 C102 p3 visit 2026-04-01 Dee/3
        north   2026-09-03 C101 n2 registered 2025-01-01 Ada
        north   2026-09-03 C102 n3 registered 2025-01-01 Ada
        """);

    assertThat(sold.run("2026-09-04").opened())
        .extracting(CaseKey::recordKey)
        .containsExactly("p3");
  }

  @Test
  void two_registrations_of_one_number_turn_on_those_whom_they_name() {
    Months two =
        new Months()
            .imported(
                """
                shelter 2026-08-15 C1 s1 went 2026-03-01 adoption own Shelter
                north   2026-08-31 C1 n1 registered 2025-01-01 Bo
                south   2026-08-31 C1 z1 registered 2025-01-01 Ada
                """);
    RunResult run = two.run("2026-09-01");
    assertThat(kinds(run)).containsExactly(FindingKind.REGISTRIES_DISAGREE);

    two.settle(run, run.opened().get(0), Answer.SAME_HOUSEHOLD, "2026-09-02");

    assertThat(two.run("2026-09-03").findings()).isEmpty();
  }

  @Test
  void of_two_registrations_of_one_number_and_one_of_another_only_those_that_diverge_are_meant() {
    Months three =
        new Months()
            .imported(
                """
                clinic  2026-07-31 C1 p1 visit 2026-03-01 Ada
                clinic  2026-07-31 C1 p1 paired C2
                north   2026-08-31 C1 n1 registered 2025-01-01 Ada
                south   2026-08-31 C1 z1 registered 2025-01-01 AdaMoved
                south   2026-08-31 C2 z2 registered 2025-01-01 Bo
                """);
    RunResult run = three.run("2026-09-01");
    CaseKey diverge = run.opened().get(0);
    assertThat(diverge.rule()).isEqualTo("chips-diverge");

    assertThatThrownBy(() -> three.settle(run, diverge, Answer.SAME_HOUSEHOLD, "2026-09-02"))
        .isInstanceOf(CannotBeSettledException.class)
        .hasMessageContaining("turns on 2 pairs")
        .hasMessageContaining("of north, south");
  }
}
