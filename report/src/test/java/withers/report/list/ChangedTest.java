package withers.report.list;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.Coast.CLINIC;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.cases.Reference;
import withers.delivery.Delivery;
import withers.delivery.Delivery.Step;
import withers.finding.Finding;
import withers.finding.RunResult;
import withers.mailing.Mailings;
import withers.report.Coast;
import withers.report.Samples;
import withers.report.text.Texts;

/** A list tells what changed since its reader's last mail. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ChangedTest {
  private static final LocalDate FEBRUARY = LocalDate.of(2026, 2, 1);

  private final Texts texts = Texts.in(Locale.UK);
  private final Samples samples = new Samples();
  private final RunResult run = samples.run();
  private final List<CaseKey> own =
      run.findings().stream()
          .map(finding -> finding.caseKey())
          .filter(key -> key.actor().equals(CLINIC))
          .toList();
  private final CaseKey unjudged = run.stillOpen().get(3);
  private final CaseKey closed = run.closed().get(0);

  @Test
  void without_a_mail_that_came_through_it_is_told_from_the_run_before() {
    FollowUpList list = after();

    assertThat(Changed.in(list, texts))
        .isEqualTo("5 new, 2 still open, 1 settled since last time.");
    assertThat(list.isReminder()).isFalse();
    assertThat(list.told()).hasSize(7).isSorted();
  }

  @Test
  void what_the_last_mail_told_is_still_open_or_settled_and_the_rest_is_new() {
    FollowUpList list = after(own.get(0), own.get(1), unjudged, closed);

    assertThat(Changed.in(list, texts))
        .isEqualTo("5 new, 2 still open, 1 settled since the list of 2 February 2026.");
    assertThat(list.bands().get(0).tasks().get(0).followUps().get(0).mark()).isEqualTo(Mark.OPEN);
  }

  @Test
  void what_can_not_be_judged_this_time_stays_told() {
    assertThat(after(unjudged).told()).contains(Reference.of(unjudged)).hasSize(8);
    assertThat(after(closed).told()).doesNotContain(Reference.of(closed)).hasSize(7);
  }

  @Test
  void what_was_told_under_another_chip_of_the_animal_is_neither_new_nor_settled() {
    Finding onTwoChips =
        run.findings().stream()
            .filter(finding -> finding.actor().equals(CLINIC) && finding.chips().size() > 1)
            .findFirst()
            .orElseThrow();
    CaseKey key = onTwoChips.caseKey();
    Anchor other = new Anchor.Chip(onTwoChips.chips().get(1));
    CaseKey former = new CaseKey(key.rule(), other, key.actor(), key.recordKey());

    FollowUpList list = after(former);

    assertThat(Changed.in(list, texts))
        .isEqualTo("6 new, 1 still open, 0 settled since the list of 2 February 2026.");
    assertThat(list.told())
        .contains(Reference.of(key))
        .doesNotContain(Reference.of(former))
        .hasSize(7);
  }

  @Test
  void a_list_with_nothing_new_is_a_reminder() {
    FollowUpList list = after(own.toArray(CaseKey[]::new));

    assertThat(list.isReminder()).isTrue();
    assertThat(Changed.in(list, texts))
        .isEqualTo(
            "0 new, 7 still open, 0 settled since the list of 2 February 2026. Nothing here is new."
                + " This is a reminder of what is still open.");
  }

  /** The clinic's list, after a mail that told of these; after none when there are none. */
  private FollowUpList after(CaseKey... told) {
    List<Delivery> steps = new ArrayList<>();
    if (told.length > 0) {
      LocalDate on = FEBRUARY.plusDays(1);
      List<String> references = List.of(told).stream().map(Reference::of).toList();
      steps.add(new Delivery(CLINIC, "2026-02-01-0f", FEBRUARY, on, Step.PENDING, references, ""));
      steps.add(steps.get(0).then(Step.ACCEPTED, on, "250 well"));
    }
    return FollowUpLists.of(run, Coast.DIRECTORY, samples.coast.vault, texts, Mailings.of(steps))
        .stream()
        .filter(list -> list.organisation().id().equals(CLINIC))
        .findFirst()
        .orElseThrow();
  }
}
