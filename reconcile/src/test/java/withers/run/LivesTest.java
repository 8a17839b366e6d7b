package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.assertj.core.groups.Tuple;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.answered.Answers;
import withers.answered.LifeMaker;
import withers.cases.Anchor;
import withers.cases.Answered;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.cases.CaseStep.Step;
import withers.chip.ChipNumber;
import withers.finding.Band;
import withers.finding.Finding;
import withers.finding.Life;
import withers.finding.Life.Stage;
import withers.finding.Priority;
import withers.finding.RecordFindings;
import withers.id.OrganisationId;
import withers.rule.Assessment;
import withers.settled.Settlements;
import withers.world.Chips;

/** What is told of follow-ups that go on under another key. Invented. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LivesTest {

  private static final LocalDate SEPTEMBER = LocalDate.of(2026, 9, 1);
  private static final LocalDate OCTOBER = LocalDate.of(2026, 10, 1);
  private static final CaseKey FORMER = key("s1");
  private static final CaseKey NOW = key("t1");

  private static CaseKey key(String record) {
    return new CaseKey(
        "contact-behind", new Anchor.Chip(Chips.chip(100)), new OrganisationId("shelter"), record);
  }

  private static Answered died(CaseKey key, LocalDate day) {
    return new Answered(
        key,
        day,
        Optional.of(SEPTEMBER),
        Optional.of(withers.cases.Outcome.DIED),
        Optional.empty(),
        Optional.empty(),
        "front desk");
  }

  private static final Outcome NOTHING_FOUND = outcome(List.of());

  private static Outcome outcome(List<Assessment> assessments) {
    RecordFindings ofRecords = new RecordFindings(List.of(), Set.of(), Set.of(), List.of());
    return new Outcome(1, assessments, ofRecords, Set.of());
  }

  private static List<Life> lives(Changes changes, Outcome outcome, Answered... answered) {
    Openings openings = new Openings();
    openings.take(new CaseStep(FORMER, Step.OPENED, SEPTEMBER, "september"));
    LifeMaker maker = new LifeMaker(Answers.of(List.of(answered)), Settlements.NONE, OCTOBER, 45);
    return new Lives(maker, openings, changes, outcome).all();
  }

  private static Life life(Answered answered) {
    Changes changes =
        new Changes(List.of(), List.of(NOW), List.of(), List.of(), Map.of(NOW, FORMER));
    List<Life> lives = lives(changes, NOTHING_FOUND, answered);
    assertThat(lives).hasSize(1);
    return lives.get(0);
  }

  @Test
  void one_that_goes_on_is_open_since_it_was_opened_first() {
    Life life = life(died(key("another"), SEPTEMBER.plusDays(4)));

    assertThat(life.key()).isEqualTo(NOW);
    assertThat(life.since()).isEqualTo(SEPTEMBER);
    assertThat(life.stage()).isEqualTo(Stage.OPEN);
  }

  @Test
  void what_was_answered_under_either_key_counts() {
    for (CaseKey key : List.of(FORMER, NOW)) {
      Life life = life(died(key, SEPTEMBER.plusDays(4)));

      assertThat(life.key()).isEqualTo(NOW);
      assertThat(life.stage()).as("answered under %s", key.recordKey()).isEqualTo(Stage.ANSWERED);
    }
  }

  @Test
  void what_was_answered_before_it_was_opened_first_does_not_count() {
    assertThat(life(died(FORMER, SEPTEMBER.minusDays(1))).stage()).isEqualTo(Stage.OPEN);
  }

  @Test
  void what_was_answered_under_any_number_of_the_animal_counts() {
    CaseKey other =
        new CaseKey(
            FORMER.rule(), new Anchor.Chip(Chips.chip(101)), FORMER.actor(), FORMER.recordKey());
    List<ChipNumber> chips = List.of(Chips.chip(100), Chips.chip(101));
    Finding finding = SampleFindings.of(FORMER, chips, new Priority(Band.THIS_MONTH, 1, List.of()));
    Outcome found =
        outcome(
            List.of(
                new Assessment(
                    chips, Optional.of(finding), Set.of(), Set.of(), Optional.empty(), List.of())));
    Changes stillOpen = new Changes(List.of(), List.of(FORMER), List.of(), List.of(), Map.of());

    assertThat(lives(stillOpen, found, died(other, SEPTEMBER.plusDays(4))))
        .extracting(Life::key, Life::stage)
        .containsExactly(Tuple.tuple(FORMER, Stage.ANSWERED));
  }

  @Test
  void opened_and_open_and_closed_ones_are_told_in_one_order() {
    Changes changes =
        new Changes(
            List.of(key("s2"), key("s5")),
            List.of(key("s3")),
            List.of(key("s4"), key("s6")),
            List.of(),
            Map.of());

    assertThat(lives(changes, NOTHING_FOUND, died(key("s4"), OCTOBER)))
        .extracting(Life::key, Life::stage)
        .containsExactly(
            Tuple.tuple(key("s2"), Stage.OPEN),
            Tuple.tuple(key("s3"), Stage.OPEN),
            Tuple.tuple(key("s4"), Stage.CLOSED),
            Tuple.tuple(key("s5"), Stage.OPEN));
  }
}
