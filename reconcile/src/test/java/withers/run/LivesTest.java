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
import withers.answered.Answers;
import withers.answered.LifeMaker;
import withers.cases.Anchor;
import withers.cases.Answered;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.cases.CaseStep.Step;
import withers.finding.Life;
import withers.finding.Life.Stage;
import withers.finding.RecordFindings;
import withers.id.OrganisationId;
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

  private static Life life(Answered answered) {
    Openings openings = new Openings();
    openings.take(new CaseStep(FORMER, Step.OPENED, SEPTEMBER, "september"));
    Changes changes =
        new Changes(List.of(), List.of(NOW), List.of(), List.of(), Map.of(NOW, FORMER));
    Outcome nothingFound =
        new Outcome(
            1, List.of(), new RecordFindings(List.of(), Set.of(), Set.of(), List.of()), Set.of());
    LifeMaker maker = new LifeMaker(Answers.of(List.of(answered)), Settlements.NONE, OCTOBER, 45);
    List<Life> lives = new Lives(maker, openings, changes, nothingFound).all();
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
}
