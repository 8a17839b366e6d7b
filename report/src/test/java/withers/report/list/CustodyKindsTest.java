package withers.report.list;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.Coast.CLINIC;
import static withers.report.Coast.SHELTER;
import static withers.report.Coast.TIDELINE;

import java.util.Locale;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.finding.Evidence.Part;
import withers.finding.FindingKind;
import withers.finding.RunResult;
import withers.finding.Who;
import withers.report.Coast;
import withers.report.FindingStory;
import withers.report.Samples;
import withers.report.text.Texts;

/** What lists say about kinds that tell of custody, scans, losses and deaths. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CustodyKindsTest {
  private final Texts texts = Texts.in(Locale.UK);
  private final Coast coast = new Coast();

  @Test
  void a_lost_animal_is_registered_today() {
    FollowUp followUp =
        one(
            story(FindingKind.LOST_UNREACHABLE)
                .with(coast.person(CLINIC, Samples.MARA))
                .because(
                    Part.LOST, "2026-02-27", CLINIC, "P-17", coast.person(CLINIC, Samples.MARA)));

    assertThat(followUp.wrong())
        .isEqualTo(
            "Pip was reported lost on 27 February 2026. Its chip is not registered with any registry"
                + " that we can check.");
    assertThat(followUp.calls()).map(Callee::name).containsExactly("Mara Linden");
    assertThat(followUp.steps())
        .containsExactly(
            "Call the person who reported Pip lost. Ask whether it is back.",
            "If not: help them to register number 999 000 000 000 001 today, with a phone number that"
                + " is answered.",
            "When Pip is back, enter it in your records.");
    assertThat(followUp.evidence().get(0))
        .startsWith("On 27 February 2026, Mara Linden reported the animal with chip");
  }

  @Test
  void a_lost_animal_whose_registration_leads_nowhere_is_the_registry_s_too() {
    FollowUp followUp =
        one(
            story(FindingKind.LOST_UNREACHABLE)
                .registered(TIDELINE, new Who.Nobody())
                .because(Part.LOST, "2026-02-27", CLINIC, "P-17", new Who.Nobody()));

    assertThat(followUp.wrong())
        .isEqualTo(
            "Pip was reported lost on 27 February 2026. Its registration leads to nobody who misses"
                + " it.");
    assertThat(followUp.steps().get(1))
        .isEqualTo(
            "If not: call Tideline. Ask what it needs to enter them for number 999 000 000 000 001"
                + " today.");
  }

  @Test
  void a_number_on_two_animals_names_what_differs_and_who_else_has_a_record() {
    FollowUp followUp =
        one(
            story(FindingKind.NUMBER_ON_TWO_ANIMALS)
                .differing("species", "birth")
                .because(Part.DESCRIBED, "2026-02-01", CLINIC, "P-17", new Who.Nobody())
                .because(Part.DESCRIBED, "2026-01-01", SHELTER, "A-1", new Who.Nobody()));

    assertThat(followUp.wrong())
        .isEqualTo(
            "Two records give number 999 000 000 000 001 to animals that cannot be one. What differs:"
                + " kind of animal and day of birth.");
    assertThat(followUp.calls()).map(Callee::name).containsExactly("Dune Shelter");
    assertThat(followUp.calls()).map(Callee::why).containsExactly("has another record of it");
  }

  @Test
  void unclear_custody_tells_a_wrong_death_from_two_places_on_one_day() {
    FindingStory story = story(FindingKind.CUSTODY_UNCLEAR);
    assertThat(one(story).wrong())
        .isEqualTo(
            "By the records, Pip went to more than one place on one day. They do not tell where it"
                + " stayed.");

    story.because(Part.DIED, "2026-01-01", CLINIC, "P-17", new Who.Nobody());
    assertThat(one(story).wrong())
        .isEqualTo(
            "A record says that Pip died on 1 January 2026. Later records say that it lives.");
  }

  @Test
  void a_placeholder_contact_is_filled_in_by_the_keeper() {
    FollowUp followUp =
        one(
            story(FindingKind.PLACEHOLDER_CONTACT)
                .with(coast.person(CLINIC, Samples.MARA))
                .registered(TIDELINE, new Who.Nobody()));

    assertThat(followUp.wrong())
        .isEqualTo(
            "Pip is with Mara Linden. Number 999 000 000 000 001 is registered, but to nobody who can"
                + " be reached.");
    assertThat(followUp.steps().get(2))
        .isEqualTo(
            "If so: ask them to have name and phone entered for number 999 000 000 000 001, with"
                + " Tideline.");
  }

  @Test
  void a_chip_that_was_not_detected_is_looked_for_again() {
    FollowUp followUp =
        one(
            story(FindingKind.NOT_DETECTED)
                .with(coast.person(CLINIC, Samples.MARA))
                .because(Part.NOT_DETECTED, "2026-02-01", CLINIC, "P-17", new Who.Nobody()));

    assertThat(followUp.wrong())
        .isEqualTo("Pip: the last scan for chip 999 000 000 000 001 did not find it.");
    assertThat(followUp.steps().get(0)).isEqualTo("Call Mara Linden.");
    assertThat(followUp.evidence().get(0))
        .startsWith("On 1 February 2026, chip 999 000 000 000 001 was not detected.");
  }

  @Test
  void a_scan_that_is_overdue_waits_for_the_next_visit() {
    FollowUp followUp = one(story(FindingKind.SCAN_OVERDUE));

    assertThat(followUp.steps().get(0))
        .isEqualTo(
            "At the next visit, scan for chip 999 000 000 000 001 before anything else is done.");
  }

  @Test
  void nobody_but_the_registry_is_called_about_an_animal_that_died() {
    FollowUp followUp =
        one(
            story(FindingKind.REGISTERED_AFTER_DEATH)
                .with(coast.person(CLINIC, Samples.MARA))
                .registered(TIDELINE, coast.person(TIDELINE, Samples.MARA)));

    assertThat(followUp.calls()).map(Callee::name).containsExactly("Tideline");
    assertThat(followUp.wrong())
        .isEqualTo("Pip died, by your record. Number 999 000 000 000 001 is still registered.");
    assertThat(followUp.steps()).noneMatch(step -> step.contains("Mara"));
  }

  private static FindingStory story(FindingKind kind) {
    return FindingStory.of(kind, CLINIC, 1).named("Pip");
  }

  /** With ordinary blanks in numbers. */
  private FollowUp one(FindingStory story) {
    RunResult run = Coast.run(story);
    FollowUp told =
        FollowUpLists.of(run, Coast.DIRECTORY, coast.vault, texts)
            .get(0)
            .bands()
            .get(0)
            .tasks()
            .get(0)
            .followUps()
            .get(0);
    return new FollowUp(
        told.reference(),
        told.mark(),
        told.animal(),
        told.chips(),
        told.written(),
        told.record(),
        plain(told.wrong()),
        told.soFar(),
        told.calls(),
        told.steps().stream().map(CustodyKindsTest::plain).toList(),
        told.evidence().stream().map(CustodyKindsTest::plain).toList(),
        told.comparisons(),
        told.cautions(),
        told.newest());
  }

  private static String plain(String text) {
    return text.replace('\u00a0', ' ');
  }
}
