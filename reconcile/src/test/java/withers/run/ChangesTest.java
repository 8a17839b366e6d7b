package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.cases.CaseStep.Step;
import withers.finding.Band;
import withers.finding.Finding;
import withers.finding.Priority;
import withers.finding.RecordFindings;
import withers.id.OrganisationId;
import withers.rule.Assessment;
import withers.world.Chips;

/** Which follow-ups are closed and opened, and in which order. Invented. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ChangesTest {

  private static final LocalDate DAY = LocalDate.of(2026, 10, 1);
  private static final CaseKey KEY = key(100);

  private static CaseKey key(int number) {
    return new CaseKey(
        "contact-behind",
        new Anchor.Chip(Chips.chip(number)),
        new OrganisationId("shelter"),
        "s" + number);
  }

  private static CaseStep step(Step step, int number) {
    return new CaseStep(key(number), step, DAY, "run");
  }

  @Test
  void closed_settled_and_moved_ones_are_closed_in_one_order_and_then_new_and_moved_ones_opened() {
    Changes changes =
        new Changes(
            List.of(key(120), key(150)),
            List.of(key(110), key(140), key(160)),
            List.of(key(230), key(260)),
            List.of(key(210), key(240)),
            Map.of(key(110), key(250), key(140), key(220), key(160), key(200)));

    assertThat(changes.events(DAY, "run"))
        .containsExactly(
            step(Step.CLOSED, 200),
            step(Step.CLOSED, 210),
            step(Step.CLOSED, 220),
            step(Step.CLOSED, 230),
            step(Step.CLOSED, 240),
            step(Step.CLOSED, 250),
            step(Step.CLOSED, 260),
            step(Step.OPENED, 110),
            step(Step.OPENED, 120),
            step(Step.OPENED, 140),
            step(Step.OPENED, 150),
            step(Step.OPENED, 160));
  }

  @Test
  void one_that_goes_on_as_two_is_closed_once() {
    Changes changes =
        new Changes(
            List.of(),
            List.of(key(110), key(120)),
            List.of(),
            List.of(),
            Map.of(key(110), key(200), key(120), key(200)));

    assertThat(changes.events(DAY, "run"))
        .containsExactly(step(Step.CLOSED, 200), step(Step.OPENED, 110), step(Step.OPENED, 120));
  }

  private static CaseKey called(String record) {
    return new CaseKey(KEY.rule(), KEY.anchor(), KEY.actor(), record);
  }

  private static Finding finding(CaseKey key) {
    return SampleFindings.of(key, List.of(Chips.chip(100)), new Priority(Band.TODAY, 1, List.of()));
  }

  /** An animal that says this and no more. */
  private static Assessment animal(Optional<Finding> finding, List<Finding> settled) {
    return new Assessment(
        List.of(Chips.chip(100)), finding, Set.of(), Set.of(), Optional.empty(), settled);
  }

  private static Outcome outcome(
      Optional<Assessment> assessment, Set<CaseKey> undecided, Set<CaseKey> answered) {
    RecordFindings records = new RecordFindings(List.of(), undecided, Set.of(), List.of());
    return new Outcome(1, assessment.stream().toList(), records, answered);
  }

  @Test
  void one_whose_record_has_a_new_key_goes_on_under_it() {
    Outcome found =
        outcome(
            Optional.of(animal(Optional.of(finding(called("t1"))), List.of())), Set.of(), Set.of());

    assertThat(Changes.of(Set.of(KEY), Map.of(called("t1"), KEY), found))
        .isEqualTo(
            new Changes(
                List.of(), List.of(called("t1")), List.of(), List.of(), Map.of(called("t1"), KEY)));
  }

  @Test
  void one_that_is_open_under_its_new_key_too_stays_there_and_the_former_is_closed() {
    Outcome found =
        outcome(
            Optional.of(animal(Optional.of(finding(called("t1"))), List.of())), Set.of(), Set.of());

    assertThat(Changes.of(Set.of(KEY, called("t1")), Map.of(called("t1"), KEY), found))
        .isEqualTo(
            new Changes(List.of(), List.of(called("t1")), List.of(KEY), List.of(), Map.of()));
  }

  @Test
  void one_about_a_record_with_a_new_key_that_can_t_be_judged_stays_open() {
    Outcome undecided = outcome(Optional.empty(), Set.of(called("t1")), Set.of());

    assertThat(Changes.of(Set.of(KEY), Map.of(called("t1"), KEY), undecided))
        .isEqualTo(new Changes(List.of(), List.of(KEY), List.of(), List.of(), Map.of()));
  }

  @Test
  void what_people_settled_is_not_closed_by_the_data_whatever_key_its_record_has_now() {
    Changes settled = new Changes(List.of(), List.of(), List.of(), List.of(KEY), Map.of());
    Outcome answered = outcome(Optional.empty(), Set.of(), Set.of(KEY));
    Outcome heldBack =
        outcome(
            Optional.of(animal(Optional.empty(), List.of(finding(called("t1"))))),
            Set.of(),
            Set.of());
    Outcome nothing = outcome(Optional.empty(), Set.of(), Set.of());

    assertThat(Changes.of(Set.of(KEY), Map.of(), answered)).isEqualTo(settled);
    assertThat(Changes.of(Set.of(KEY), Map.of(called("t1"), KEY), heldBack)).isEqualTo(settled);
    assertThat(Changes.of(Set.of(KEY), Map.of(), nothing).closed()).containsExactly(KEY);
  }
}
