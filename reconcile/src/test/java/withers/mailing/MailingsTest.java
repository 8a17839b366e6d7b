package withers.mailing;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.delivery.Delivery;
import withers.delivery.Delivery.Step;
import withers.id.OrganisationId;

@DisplayNameGeneration(ReplaceUnderscores.class)
class MailingsTest {
  private static final OrganisationId CLINIC = new OrganisationId("harbour-vets");
  private static final OrganisationId SHELTER = new OrganisationId("dune-shelter");
  private static final LocalDate MARCH = LocalDate.of(2026, 3, 1);
  private static final LocalDate APRIL = LocalDate.of(2026, 4, 1);
  private static final LocalDate MAY = LocalDate.of(2026, 5, 1);

  private final List<Delivery> steps = new ArrayList<>();

  @ParameterizedTest
  @CsvSource({
    "PENDING,   UNSURE",
    "ACCEPTED,  SENT",
    "REFUSED,   UNSENT",
    "POSTPONED, UNSENT",
    "UNSURE,    UNSURE",
    "ARRIVED,   SENT",
    "LOST,      UNSENT"
  })
  void the_last_step_tells_what_became_of_a_list(Step last, Fate fate) {
    sent(CLINIC, MARCH, last, "A");

    assertThat(Mailings.of(steps).fate(run(MARCH), CLINIC)).isEqualTo(fate);
  }

  @Test
  void each_list_is_known_by_its_run_and_recipient_together() {
    sent(CLINIC, MARCH, Step.ACCEPTED, "A");

    Mailings mailings = Mailings.of(steps);

    assertThat(mailings.fate(run(APRIL), CLINIC)).isEqualTo(Fate.UNSENT);
    assertThat(mailings.fate(run(MARCH), SHELTER)).isEqualTo(Fate.UNSENT);
  }

  @Test
  void only_mails_that_came_through_are_last_mails() {
    sent(CLINIC, MARCH, Step.ACCEPTED, "A");
    sent(CLINIC, APRIL, Step.UNSURE, "A", "B");

    assertThat(last(MAY)).contains(new LastMail(MARCH.plusDays(1), Set.of("A")));

    steps.add(steps.get(steps.size() - 1).then(Step.ARRIVED, MAY, ""));
    assertThat(last(MAY)).contains(new LastMail(APRIL.plusDays(1), Set.of("A", "B")));
  }

  @Test
  void a_list_that_is_made_again_is_compared_with_the_same_mail_as_before() {
    sent(CLINIC, MARCH, Step.ACCEPTED, "A");
    sent(CLINIC, APRIL, Step.ACCEPTED, "A", "B");
    sent(CLINIC, MAY, Step.ACCEPTED, "C");

    assertThat(last(APRIL)).contains(new LastMail(MARCH.plusDays(1), Set.of("A")));
    assertThat(last(MARCH)).isEmpty();
  }

  @Test
  void a_run_of_an_earlier_day_is_not_compared_with_a_later_one() {
    sent(CLINIC, MAY, Step.ACCEPTED, "A");

    assertThat(last(APRIL)).isEmpty();
  }

  @Test
  void a_second_attempt_tells_what_was_told_then() {
    sent(CLINIC, MARCH, Step.POSTPONED, "A");
    sent(CLINIC, MARCH, Step.ACCEPTED, "A", "B");

    assertThat(last(APRIL)).map(LastMail::told).contains(Set.of("A", "B"));
  }

  @Test
  void unanswered_and_unsure_ones_are_found() {
    sent(CLINIC, MARCH, Step.UNSURE, "A");
    sent(SHELTER, MARCH, Step.PENDING, "B");
    sent(SHELTER, APRIL, Step.REFUSED, "B");

    Mailings mailings = Mailings.of(steps);

    assertThat(mailings.unanswered()).map(Delivery::recipient).containsExactly(SHELTER);
    assertThat(mailings.unsure()).map(Delivery::recipient).containsExactly(CLINIC, SHELTER);
    assertThat(mailings.all()).hasSize(3);
  }

  /** Nothing new and nothing due: nothing goes out. */
  @ParameterizedTest
  @CsvSource({
    "UNSENT, ,           false, 2026-03-01, First",
    "UNSENT, 2026-02-27, true,  2026-03-01, News",
    "UNSENT, 2026-02-27, false, 2026-03-01, TooEarly",
    "UNSENT, 2026-02-01, false, 2026-02-28, TooEarly",
    "UNSENT, 2026-02-01, false, 2026-03-01, Reminder",
    "UNSENT, 2026-01-01, false, 2026-03-01, Reminder",
    "SENT,   ,           true,  2026-03-01, Sent",
    "SENT,   2026-01-01, true,  2026-03-01, Sent",
    "UNSURE, 2026-01-01, true,  2026-03-01, Unsure"
  })
  void a_list_goes_out_when_it_is_the_first_has_news_or_is_a_reminder(
      Fate fate, LocalDate last, boolean isNew, LocalDate today, String due) {
    Optional<LastMail> mail = Optional.ofNullable(last).map(on -> new LastMail(on, Set.of()));

    assertThat(Due.of(fate, mail, isNew, today, 28).getClass().getSimpleName()).isEqualTo(due);
  }

  private Optional<LastMail> last(LocalDate asOf) {
    return Mailings.of(steps).lastBefore(run(asOf), asOf, CLINIC);
  }

  private void sent(OrganisationId to, LocalDate asOf, Step outcome, String... told) {
    LocalDate on = asOf.plusDays(1);
    Delivery pending = new Delivery(to, run(asOf), asOf, on, Step.PENDING, List.of(told), "");
    steps.add(pending);
    if (outcome != Step.PENDING) {
      steps.add(pending.then(outcome, on, ""));
    }
  }

  private static String run(LocalDate asOf) {
    return asOf + "-0123abcd";
  }
}
