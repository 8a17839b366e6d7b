package withers.answered;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.cases.Anchor;
import withers.cases.Answered;
import withers.cases.CaseKey;
import withers.cases.Channel;
import withers.cases.Outcome;
import withers.finding.Band;
import withers.finding.Finding;
import withers.finding.Life;
import withers.finding.Life.Stage;
import withers.finding.RunResult;
import withers.history.Scope;
import withers.id.OrganisationId;
import withers.settling.Months;
import withers.world.Chips;

/** What answers and snoozes do to a follow-up. The list of 1 September told of it first. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class AnsweredTest {

  private static final String ADOPTED =
      """
      shelter 2026-08-31 C100 s1 went 2026-03-01 adoption own Ada
      north   2026-08-31 C100 n1 registered 2025-01-01 Shelter
      """;
  private static final CaseKey BEHIND = key(100, "s1");
  private static final LocalDate LISTED = LocalDate.of(2026, 9, 1);

  private final Months months = new Months().imported(ADOPTED);
  private final RunResult september = months.run("2026-09-01");

  private static CaseKey key(int chip, String record) {
    return new CaseKey(
        "contact-behind", new Anchor.Chip(Chips.chip(chip)), new OrganisationId("shelter"), record);
  }

  private static Answered answer(String day, Outcome outcome) {
    return answer(day, outcome, Optional.empty());
  }

  private static Answered answer(String day, Outcome outcome, Optional<String> again) {
    return new Answered(
        BEHIND,
        LocalDate.parse(day),
        Optional.of(LISTED),
        Optional.of(outcome),
        again.map(LocalDate::parse),
        Optional.empty(),
        "front desk");
  }

  private static Life life(RunResult run) {
    return life(run, BEHIND);
  }

  private static Life life(RunResult run, CaseKey key) {
    return run.lives().stream().filter(one -> one.key().equals(key)).findFirst().orElseThrow();
  }

  @Test
  void one_that_nobody_answered_is_open_since_the_run_that_opened_it() {
    Life october = life(months.imported("north 2026-09-30").run("2026-10-01"));

    assertThat(life(september).since()).isEqualTo(LISTED);
    assertThat(october)
        .isEqualTo(
            new Life(
                BEHIND,
                LISTED,
                false,
                Stage.OPEN,
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty()));
  }

  @ParameterizedTest
  @CsvSource({
    // what came of it on 5 September; as of; where it stands, and until when
    "PUT_RIGHT,   2026-10-01, ANSWERED, 2026-10-20",
    "WILL_DO,     2026-10-19, ANSWERED, 2026-10-20",
    "WILL_DO,     2026-10-20, OPEN,",
    "DIED,        2026-10-01, ANSWERED, 2026-10-20",
    "GONE,        2026-10-01, ANSWERED, 2026-10-20",
    "OUR_MISTAKE, 2026-10-01, ANSWERED, 2026-10-20",
    "LEAVE,       2026-10-01, ANSWERED, 2026-10-20",
    "NOT_OURS,    2026-10-01, ANSWERED, 2026-10-20",
    "NOT_REACHED, 2026-10-01, OPEN,",
    "TRIED,       2026-10-01, OPEN,",
    "DIED,        2026-09-04, OPEN,"
  })
  void an_outcome_gives_the_records_45_days_and_an_attempt_none(
      Outcome outcome, String asOf, Stage stage, LocalDate until) {
    Life life = life(months.answered(answer("2026-09-05", outcome)).run(asOf));

    assertThat(life.stage()).isEqualTo(stage);
    assertThat(life.until()).isEqualTo(Optional.ofNullable(until));
  }

  @Test
  void the_records_of_what_is_for_today_have_a_week() {
    CaseKey waiting =
        new CaseKey(
            "found-waiting", new Anchor.Chip(Chips.chip(100)), new OrganisationId("desk"), "d1");
    RunResult found =
        months.imported("desk 2026-09-02 C100 d1 found 2026-09-01 -").run("2026-09-03");
    months.answered(
        new Answered(
            waiting,
            LocalDate.of(2026, 9, 5),
            Optional.of(found.asOf()),
            Optional.of(Outcome.WILL_DO),
            Optional.empty(),
            Optional.empty(),
            "front desk"));

    assertThat(found.findings().get(0).caseKey()).isEqualTo(waiting);
    assertThat(found.findings().get(0).priority().band()).isEqualTo(Band.TODAY);
    assertThat(stage(months.run("2026-09-11"), waiting)).isEqualTo(Stage.ANSWERED);
    assertThat(stage(months.run("2026-09-12"), waiting)).isEqualTo(Stage.OPEN);
  }

  private static Stage stage(RunResult run, CaseKey key) {
    return life(run, key).stage();
  }

  @Test
  void what_was_answered_is_still_told_when_it_comes_up_again() {
    Life life = life(months.answered(answer("2026-09-05", Outcome.DIED)).run("2026-12-01"));

    assertThat(life.stage()).isEqualTo(Stage.OPEN);
    assertThat(life.last())
        .contains(
            new Life.Word(LocalDate.of(2026, 9, 5), Optional.of(Outcome.DIED), "front desk", ""));
  }

  @Test
  void attempts_are_counted_by_their_days_and_the_last_word_counts() {
    months
        .answered(answer("2026-09-12", Outcome.NOT_REACHED), answer("2026-09-05", Outcome.TRIED))
        .answered(answer("2026-09-05", Outcome.NOT_REACHED));

    Life tried = life(months.run("2026-10-01"));
    Life done = life(months.answered(answer("2026-09-12", Outcome.WILL_DO)).run("2026-10-01"));

    assertThat(tried.stage()).isEqualTo(Stage.OPEN);
    assertThat(tried.attempts())
        .containsExactly(LocalDate.of(2026, 9, 5), LocalDate.of(2026, 9, 12));
    assertThat(done.stage()).isEqualTo(Stage.ANSWERED);
    assertThat(done.attempts()).hasSize(2);
  }

  @Test
  void a_sheet_of_last_month_overrules_nothing_newer() {
    months
        .answered(answer("2026-09-20", Outcome.NOT_REACHED))
        .answered(answer("2026-09-05", Outcome.WILL_DO));

    assertThat(life(months.run("2026-10-01")).stage()).isEqualTo(Stage.OPEN);
  }

  @Test
  void asked_again_on_a_day_it_rests_until_that_day_with_the_outcome_as_reason() {
    months.answered(answer("2026-09-05", Outcome.NOT_REACHED, Optional.of("2026-11-01")));

    Life october = life(months.run("2026-10-31"));
    Life november = life(months.run("2026-11-01"));

    assertThat(october.stage()).isEqualTo(Stage.SNOOZED);
    assertThat(october.until()).contains(LocalDate.of(2026, 11, 1));
    assertThat(october.last().orElseThrow().outcome()).contains(Outcome.NOT_REACHED);
    assertThat(november.stage()).isEqualTo(Stage.OPEN);
  }

  @Test
  void the_coordinator_puts_it_off_with_a_reason_and_may_change_the_day() {
    months.snooze(BEHIND, "2026-09-03", "2026-12-01");

    Life october = life(months.run("2026-10-01"));
    months.snooze(BEHIND, "2026-10-02", "2026-11-01");
    Life november = life(months.run("2026-11-01"));

    assertThat(october.stage()).isEqualTo(Stage.SNOOZED);
    assertThat(october.until()).contains(LocalDate.of(2026, 12, 1));
    assertThat(october.last().orElseThrow().reason()).isEqualTo("asked them");
    assertThat(november.stage()).isEqualTo(Stage.OPEN);
  }

  @Test
  void taken_back_it_is_put_off_no_longer() {
    months.snooze(BEHIND, "2026-09-03", "2026-12-01");
    months.takeBack(BEHIND, "2026-09-04");

    assertThat(life(months.run("2026-10-01")).stage()).isEqualTo(Stage.OPEN);
  }

  @Test
  void what_rests_is_found_all_the_same_and_neither_opened_nor_closed() {
    months.answered(answer("2026-09-05", Outcome.WILL_DO));

    RunResult october = months.run("2026-10-01");

    assertThat(october.findings()).extracting(Finding::caseKey).containsExactly(BEHIND);
    assertThat(october.stillOpen()).containsExactly(BEHIND);
    assertThat(october.opened()).isEmpty();
    assertThat(october.closed()).isEmpty();
  }

  @Test
  void it_comes_up_at_once_when_it_rests_on_something_newer() {
    months.answered(answer("2026-09-05", Outcome.WILL_DO));
    months.snooze(BEHIND, "2026-09-05", "2027-01-01");

    Life same = life(months.imported("north 2026-09-30").run("2026-10-01"));
    Life other =
        life(
            months
                .imported("north 2026-09-30 C100 n1 registered 2025-01-01 Cattery")
                .run("2026-10-01"));

    assertThat(same.stage()).isEqualTo(Stage.SNOOZED);
    assertThat(other.stage()).isEqualTo(Stage.OPEN);
    assertThat(other.last().orElseThrow().outcome()).contains(Outcome.WILL_DO);
  }

  @Test
  void what_the_list_did_not_know_yet_is_newer_although_the_answer_is_newer_still() {
    months.answered(answer("2026-10-05", Outcome.WILL_DO));
    months.imported("north 2026-09-30 C100 n1 registered 2025-01-01 Cattery");

    assertThat(life(months.run("2026-10-10")).stage()).isEqualTo(Stage.OPEN);
  }

  @Test
  void closed_by_the_data_it_is_told_who_had_answered_and_opened_again_it_starts_anew() {
    months.answered(answer("2026-09-05", Outcome.PUT_RIGHT));

    RunResult october =
        months.imported("north 2026-09-30 C100 n1 registered 2025-01-01 Ada").run("2026-10-01");
    RunResult november =
        months.imported("north 2026-10-31 C100 n1 registered 2025-01-01 Shelter").run("2026-11-01");

    assertThat(october.closed()).containsExactly(BEHIND);
    assertThat(life(october).stage()).isEqualTo(Stage.CLOSED);
    assertThat(life(november))
        .isEqualTo(
            new Life(
                BEHIND,
                LocalDate.of(2026, 11, 1),
                true,
                Stage.OPEN,
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty()));
  }

  @Test
  void closed_by_the_data_without_an_answer_nothing_is_told() {
    RunResult october =
        months.imported("north 2026-09-30 C100 n1 registered 2025-01-01 Ada").run("2026-10-01");

    assertThat(october.closed()).containsExactly(BEHIND);
    assertThat(october.lives()).isEmpty();
  }

  @Test
  void a_run_that_looks_back_knows_what_was_answered_by_then() {
    months.answered(answer("2026-09-05", Outcome.WILL_DO));
    RunResult october = months.run("2026-10-01");

    LocalDate known = LocalDate.of(2026, 9, 4);
    RunResult before = months.run(new Scope(LocalDate.of(2026, 10, 1), Optional.of(known)));

    assertThat(months.run("2026-10-01")).isEqualTo(october);
    assertThat(life(october).stage()).isEqualTo(Stage.ANSWERED);
    assertThat(life(before).stage()).isEqualTo(Stage.OPEN);
  }

  @Test
  void a_follow_up_that_goes_on_under_another_chip_keeps_its_beginning_and_its_answers() {
    months.answered(answer("2026-09-05", Outcome.WILL_DO));

    RunResult october =
        months
            .imported("shelter 2026-09-01 C100 s1 paired C50\nnorth 2026-09-01")
            .run("2026-10-01");

    CaseKey moved = key(50, "s1");
    assertThat(october.stillOpen()).containsExactly(moved);
    Life life = october.lives().get(0);
    assertThat(life.key()).isEqualTo(moved);
    assertThat(life.since()).isEqualTo(LISTED);
    assertThat(life.stage()).isEqualTo(Stage.ANSWERED);
    Life november = months.run("2026-10-02").lives().get(0);
    assertThat(november.since()).isEqualTo(LISTED);
  }

  @Test
  void one_whose_record_gets_another_key_keeps_its_beginning_and_its_answers() {
    months.answered(answer("2026-09-05", Outcome.WILL_DO));
    months.imported("shelter 2026-09-04 C100 s1 rekeyed t1").imported("north 2026-09-04");

    Life october = life(months.run("2026-10-01"), key(100, "t1"));
    Life nextDay = life(months.run("2026-10-02"), key(100, "t1"));

    assertThat(october.since()).isEqualTo(LISTED);
    assertThat(october.stage()).isEqualTo(Stage.ANSWERED);
    assertThat(nextDay).isEqualTo(october);
  }

  @Test
  void a_client_s_wish_goes_for_all_their_animals_with_the_organisation_that_was_told() {
    Months several =
        new Months()
            .imported(
                """
                shelter 2026-08-31 C100 s1 went 2026-03-01 adoption own Ada
                shelter 2026-08-31 C101 s2 went 2026-03-01 adoption own Ada
                shelter 2026-08-31 C102 s3 went 2026-03-01 adoption own Bo
                north   2026-08-31 C100 n1 registered 2025-01-01 Shelter
                north   2026-08-31 C101 n2 registered 2025-01-01 Shelter
                north   2026-08-31 C102 n3 registered 2025-01-01 Shelter
                """);
    several.run("2026-09-01");
    several.answered(wish("2026-09-05", Channel.EMAIL), wish("2026-09-06", Channel.NOT_AT_ALL));

    RunResult october = several.run("2026-10-01");

    assertThat(october.lives())
        .extracting(Life::key, Life::channel)
        .containsExactlyInAnyOrder(
            org.assertj.core.groups.Tuple.tuple(key(100, "s1"), Optional.of(Channel.NOT_AT_ALL)),
            org.assertj.core.groups.Tuple.tuple(key(101, "s2"), Optional.of(Channel.NOT_AT_ALL)),
            org.assertj.core.groups.Tuple.tuple(key(102, "s3"), Optional.empty()));
  }

  private static Answered wish(String day, Channel channel) {
    return new Answered(
        BEHIND,
        LocalDate.parse(day),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.of(channel),
        "");
  }
}
