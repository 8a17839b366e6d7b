package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.answered.LifeMaker.Opening;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.cases.CaseStep.Step;
import withers.id.OrganisationId;
import withers.world.Chips;

/** Since when follow-ups are open. Invented. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class OpeningsTest {

  private static final LocalDate AUGUST = LocalDate.of(2026, 8, 1);
  private static final LocalDate SEPTEMBER = LocalDate.of(2026, 9, 1);
  private static final LocalDate OCTOBER = LocalDate.of(2026, 10, 1);
  private static final CaseKey KEY = key("contact-behind", 100, "shelter", "s1");

  private final Openings openings = new Openings();

  private static CaseKey key(String rule, int chip, String actor, String record) {
    return new CaseKey(rule, new Anchor.Chip(Chips.chip(chip)), new OrganisationId(actor), record);
  }

  private void opened(CaseKey key, LocalDate day) {
    openings.take(new CaseStep(key, Step.OPENED, day, "run of " + day));
  }

  private void closed(CaseKey key, LocalDate day) {
    openings.take(new CaseStep(key, Step.CLOSED, day, "run of " + day));
  }

  /** What is told of one that is opened by the run that closes another, which was open before. */
  private Opening after(CaseKey former, CaseKey key) {
    opened(former, AUGUST);
    closed(former, SEPTEMBER);
    opened(key, SEPTEMBER);
    assertThat(openings.open()).containsExactly(key);
    return openings.of(key).orElseThrow();
  }

  @Test
  void one_is_open_since_the_run_that_opened_it() {
    opened(KEY, AUGUST);

    assertThat(openings.open()).containsExactly(KEY);
    assertThat(openings.of(KEY)).contains(new Opening(AUGUST, false));
  }

  @Test
  void one_that_was_closed_is_opened_again_and_another_is_not() {
    opened(KEY, AUGUST);
    closed(KEY, SEPTEMBER);

    assertThat(openings.open()).isEmpty();
    assertThat(openings.of(KEY)).isEmpty();
    assertThat(openings.now(KEY, OCTOBER)).isEqualTo(new Opening(OCTOBER, true));
    assertThat(openings.now(key("contact-behind", 101, "shelter", "s2"), OCTOBER))
        .isEqualTo(new Opening(OCTOBER, false));

    opened(KEY, OCTOBER);
    assertThat(openings.of(KEY)).contains(new Opening(OCTOBER, true));
  }

  @Test
  void one_that_goes_on_under_another_number_or_another_record_is_open_since_the_first() {
    CaseKey otherNumber = key("contact-behind", 50, "shelter", "s1");

    assertThat(after(KEY, otherNumber)).isEqualTo(new Opening(AUGUST, false));
    closed(otherNumber, OCTOBER);
    CaseKey otherRecord = key("contact-behind", 50, "shelter", "t1");
    opened(otherRecord, OCTOBER);
    assertThat(openings.of(otherRecord)).contains(new Opening(AUGUST, false));
  }

  @Test
  void one_that_was_opened_again_stays_so_under_another_number() {
    opened(KEY, AUGUST.minusMonths(2));
    closed(KEY, AUGUST.minusMonths(1));

    assertThat(after(KEY, key("contact-behind", 50, "shelter", "s1")))
        .isEqualTo(new Opening(AUGUST, true));
  }

  @Test
  void one_that_is_opened_by_a_later_run_than_closed_the_other_is_new() {
    opened(KEY, AUGUST);
    closed(KEY, SEPTEMBER);
    CaseKey later = key("contact-behind", 50, "shelter", "s1");
    opened(later, OCTOBER);

    assertThat(openings.of(later)).contains(new Opening(OCTOBER, false));
  }

  @Test
  void one_of_another_rule_or_organisation_or_of_neither_number_nor_record_is_new() {
    Opening isNew = new Opening(SEPTEMBER, false);

    assertThat(after(KEY, key("details-differ", 100, "shelter", "s1"))).isEqualTo(isNew);
    closed(key("details-differ", 100, "shelter", "s1"), SEPTEMBER.plusDays(1));
    assertThat(after(KEY, key("contact-behind", 100, "clinic", "s1"))).isEqualTo(isNew);
    closed(key("contact-behind", 100, "clinic", "s1"), SEPTEMBER.plusDays(2));
    assertThat(after(KEY, key("contact-behind", 101, "shelter", "s2"))).isEqualTo(isNew);
  }

  @Test
  void that_two_have_no_record_makes_neither_the_other() {
    CaseKey none = key("trail-ends-at-purchaser", 100, "clinic", "");
    CaseKey other = key("trail-ends-at-purchaser", 101, "clinic", "");

    assertThat(after(none, other)).isEqualTo(new Opening(SEPTEMBER, false));
  }
}
