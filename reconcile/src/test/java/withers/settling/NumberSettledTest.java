package withers.settling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.cases.CaseKey;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.RunResult;

/** A clinic's dog and a shelter's cat under one number. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class NumberSettledTest {

  private static final String BOTH =
      """
      clinic  2026-08-30 C100 p1 is dog Rook
      clinic  2026-08-30 C100 p1 visit 2026-03-01 Ada
      shelter 2026-08-31 C100 s1 is cat Moss
      shelter 2026-08-31 C100 s1 went 2026-05-01 adoption own Bo
      north   2026-08-31 C100 n1 registered 2026-03-01 Ada
      """;

  private final Months months = new Months().imported(BOTH);
  private final RunResult september = months.run("2026-09-01");
  private final CaseKey two = september.opened().get(0);

  private static java.util.List<FindingKind> kinds(RunResult run) {
    return run.findings().stream().map(Finding::kind).toList();
  }

  @Test
  void one_animal_after_all_is_judged_like_any_other() {
    assertThat(two.rule()).isEqualTo("number-on-two-animals");
    months.settle(september, two, Answer.ONE_ANIMAL, "2026-09-02");

    RunResult run = months.run("2026-09-03");

    assertThat(kinds(run)).containsExactly(FindingKind.CONTACT_BEHIND);
    assertThat(run.settled()).containsExactly(two);
    assertThat(run.closed()).isEmpty();
  }

  @Test
  void another_description_is_asked_about_again() {
    months.settle(september, two, Answer.ONE_ANIMAL, "2026-09-02");

    RunResult other = months.imported("vale 2026-09-03 C100 v1 is rabbit Fern").run("2026-09-04");
    assertThat(kinds(other)).containsExactly(FindingKind.NUMBER_ON_TWO_ANIMALS);

    months.settle(other, other.opened().get(0), Answer.ONE_ANIMAL, "2026-09-04");
    assertThat(kinds(months.run("2026-09-05"))).containsExactly(FindingKind.CONTACT_BEHIND);
    months.imported("clinic 2026-09-06 C100 p1 is ferret Rook");
    assertThat(kinds(months.run("2026-09-07"))).containsExactly(FindingKind.NUMBER_ON_TWO_ANIMALS);
  }

  @Test
  void what_a_record_says_under_a_mistaken_number_is_left_out() {
    months.mistaken(september, two, "shelter:s1", "2026-09-02");

    RunResult run = months.run("2026-09-03");

    assertThat(run.findings()).isEmpty();
    assertThat(run.settled()).containsExactly(two);
  }

  @Test
  void the_other_record_may_be_the_mistaken_one() {
    months.mistaken(september, two, "clinic:p1", "2026-09-02");

    assertThat(kinds(months.run("2026-09-03"))).containsExactly(FindingKind.CONTACT_BEHIND);
  }

  @Test
  void what_the_record_says_of_that_number_after_it_was_corrected_it_means() {
    months.mistaken(september, two, "shelter:s1", "2026-09-02");
    months.imported(
        """
        shelter 2026-09-10 C100 s1 corrected animal
        shelter 2026-09-10 C100 s1 corrected movement
        shelter 2026-09-10 C101 s1 is cat Moss
        """);
    assertThat(kinds(months.run("2026-09-11"))).doesNotContain(FindingKind.NUMBER_ON_TWO_ANIMALS);

    months.imported("shelter 2026-09-20 C100 s1 is cat Moss");

    assertThat(kinds(months.run("2026-09-21"))).contains(FindingKind.NUMBER_ON_TWO_ANIMALS);
  }

  @Test
  void it_goes_with_the_record_to_another_key() {
    months.mistaken(september, two, "shelter:s1", "2026-09-02");
    months.imported("shelter 2026-09-10 C100 s1 rekeyed t1");
    months.imported("shelter 2026-09-11 C100 t1 is cat Moss");

    assertThat(months.run("2026-09-12").findings()).isEmpty();
  }

  @Test
  void it_can_be_taken_back() {
    months.mistaken(september, two, "shelter:s1", "2026-09-02");
    months.run("2026-09-03");
    months.takeBack(two, "2026-09-04");

    assertThat(months.run("2026-09-05").opened()).containsExactly(two);
  }

  @Test
  void a_record_that_is_none_of_them_is_refused_and_they_are_named() {
    assertThatThrownBy(() -> months.mistaken(september, two, "north:n1", "2026-09-02"))
        .isInstanceOf(CannotBeSettledException.class)
        .hasMessage(
            "Expected --record with the record whose number is mistaken, one of clinic:p1, shelter:s1, but found another");
  }
}
