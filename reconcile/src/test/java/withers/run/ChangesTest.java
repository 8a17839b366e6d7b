package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.cases.CaseStep.Step;
import withers.id.OrganisationId;
import withers.world.Chips;

/** In which order follow-ups are closed and opened. Invented. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ChangesTest {

  private static final LocalDate DAY = LocalDate.of(2026, 10, 1);

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
}
