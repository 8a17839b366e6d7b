package withers.report.list;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.Coast.CLINIC;
import static withers.report.Coast.contact;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.cases.CaseKey;
import withers.cases.Channel;
import withers.cases.Outcome;
import withers.cases.Reference;
import withers.delivery.Delivery;
import withers.delivery.Delivery.Step;
import withers.finding.FindingKind;
import withers.finding.Life;
import withers.finding.Life.Stage;
import withers.finding.RunResult;
import withers.mailing.Mailings;
import withers.report.Coast;
import withers.report.FindingStory;
import withers.report.text.Texts;

/** What a list says of the life of its follow-ups. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SoFarTest {
  private static final LocalDate JANUARY = LocalDate.of(2026, 1, 1);

  private final Texts texts = Texts.in(Locale.UK);
  private final Coast coast = new Coast();

  private FindingStory story(FindingKind kind) {
    return FindingStory.of(kind, CLINIC, 1)
        .with(coast.person(CLINIC, contact("Mara Linden", "+1 212 555 0151")));
  }

  private static Life life(
      Stage stage, Optional<Life.Word> last, Optional<Channel> channel, LocalDate... attempts) {
    CaseKey key = FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 1).finding().caseKey();
    return new Life(
        key,
        JANUARY,
        false,
        stage,
        last,
        Optional.of(LocalDate.of(2026, 4, 1)).filter(day -> stage != Stage.OPEN),
        List.of(attempts),
        channel);
  }

  /** A run that found it again, with its life. */
  private RunResult found(FindingKind kind, Life life) {
    RunResult run = Coast.run(story(kind));
    CaseKey key = run.opened().get(0);
    return new RunResult(
        run.id(),
        run.asOf(),
        run.knownBy(),
        run.animals(),
        run.findings(),
        List.of(),
        List.of(),
        List.of(),
        run.opened(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(
            new Life(
                key,
                life.since(),
                life.reopened(),
                life.stage(),
                life.last(),
                life.until(),
                life.attempts(),
                life.channel())));
  }

  private FollowUpList list(RunResult run, Mailings mailings) {
    return FollowUpLists.of(run, Coast.DIRECTORY, coast.vault, texts, mailings).get(0);
  }

  private FollowUp only(FindingKind kind, Life life) {
    return list(found(kind, life), Mailings.NONE).bands().get(0).tasks().get(0).followUps().get(0);
  }

  private static Life.Word word(Outcome outcome, String by) {
    return new Life.Word(LocalDate.of(2026, 2, 3), Optional.of(outcome), by, "");
  }

  @Test
  void one_that_is_open_says_since_when() {
    assertThat(
            only(FindingKind.UNREGISTERED, life(Stage.OPEN, Optional.empty(), Optional.empty()))
                .soFar())
        .containsExactly("Open since 1 January 2026.");
  }

  @Test
  void mails_that_came_through_and_told_of_it_are_counted() {
    RunResult run =
        found(FindingKind.UNREGISTERED, life(Stage.OPEN, Optional.empty(), Optional.empty()));
    String reference = Reference.of(run.stillOpen().get(0));
    List<Delivery> steps = new ArrayList<>();
    for (int month = 1; month <= 3; month++) {
      LocalDate on = LocalDate.of(2026, month, 1).minusDays(20);
      List<String> told = month == 2 ? List.of() : List.of(reference);
      steps.add(new Delivery(CLINIC, "run-" + month, on, on, Step.PENDING, told, ""));
      steps.add(
          new Delivery(
              CLINIC, "run-" + month, on, on, month == 3 ? Step.LOST : Step.ACCEPTED, told, ""));
    }

    FollowUpList list = list(run, Mailings.of(steps));

    assertThat(list.bands().get(0).tasks().get(0).followUps().get(0).mark()).isEqualTo(Mark.NEW);
    assertThat(Mailings.of(steps).timesTold(run.id(), run.asOf(), CLINIC))
        .containsOnly(org.assertj.core.api.Assertions.entry(reference, 1));
  }

  @Test
  void attempts_and_what_was_answered_are_told() {
    Life tried =
        life(
            Stage.OPEN,
            Optional.of(word(Outcome.WILL_DO, "front desk")),
            Optional.of(Channel.EMAIL),
            LocalDate.of(2026, 1, 20),
            LocalDate.of(2026, 1, 25));

    assertThat(only(FindingKind.UNREGISTERED, tried).soFar())
        .containsExactly(
            "Open since 1 January 2026.",
            "Tried 2 times without reaching the client, last on 25 January 2026.",
            "Answered: “The client was reached and will do it” on 3 February 2026, by front desk."
                + " The records do not show it yet, or show something new.",
            "The client is best reached by: E-mail");
  }

  @Test
  void what_rests_is_on_no_list_but_told_apart_without_its_people() {
    FollowUpList list =
        list(
            found(
                FindingKind.UNREGISTERED,
                life(Stage.ANSWERED, Optional.of(word(Outcome.PUT_RIGHT, "")), Optional.empty())),
            Mailings.NONE);

    assertThat(list.size()).isZero();
    assertThat(list.resting()).hasSize(1);
    assertThat(list.resting().get(0).why())
        .isEqualTo(
            "“The registration has been put right” on 3 February 2026. It comes up again on"
                + " 1 April 2026, if the records still do not show it.");
    assertThat(list.resting().toString()).doesNotContain("Linden", "555");
  }

  @Test
  void who_wants_no_contact_is_not_called_and_somebody_else_is_asked() {
    Life quiet = life(Stage.OPEN, Optional.empty(), Optional.of(Channel.NOT_AT_ALL));

    FollowUp followUp = only(FindingKind.UNREGISTERED, quiet);

    assertThat(followUp.steps())
        .containsExactly(
            "Do not call, write or mail Mara Linden: they have asked for that.",
            "Ask your coordinator who else can reach them, and pass this on.");
    assertThat(followUp.calls()).isEmpty();
    assertThat(followUp.cautions()).contains("This client has asked you not to contact them.");
  }

  @Test
  void an_animal_that_waits_is_still_scanned_when_its_client_wants_no_contact() {
    Life quiet = life(Stage.OPEN, Optional.empty(), Optional.of(Channel.NOT_AT_ALL));

    assertThat(only(FindingKind.FOUND_WAITING, quiet).steps())
        .hasSizeGreaterThan(2)
        .contains("Ask your coordinator who else can reach them, and pass this on.")
        .noneMatch(step -> step.startsWith("Call "));
  }
}
