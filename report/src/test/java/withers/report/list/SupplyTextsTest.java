package withers.report.list;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.Coast.BEACON;
import static withers.report.Coast.CLINIC;
import static withers.report.Coast.TIDELINE;

import java.util.Locale;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.finding.Evidence.Part;
import withers.finding.FindingKind;
import withers.finding.Who;
import withers.report.Coast;
import withers.report.FindingStory;
import withers.report.text.Texts;

/** What lists say of supplied chips, of mistyped numbers and of registries that disagree. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SupplyTextsTest {
  private final Texts texts = Texts.in(Locale.UK);
  private final Coast coast = new Coast();
  private final Who mara = coast.person(CLINIC, Coast.contact("Mara Linden", "+1 212 555 0151"));
  private final Who jonas = coast.person(TIDELINE, Coast.contact("Jonas Abel", "+1 212 555 0161"));

  @Test
  void a_mistyped_registration_is_told_with_both_numbers_and_masks_whoever_is_registered() {
    FollowUp told =
        told(
            FindingStory.of(FindingKind.MISTYPED_REGISTRATION, CLINIC, 1100)
                .named("Nuk")
                .with(mara)
                .registeredUnder(100, TIDELINE, jonas));

    assertThat(shown(told.wrong()))
        .isEqualTo(
            "Nuk is with Mara Linden. Chip 999_000_000_001_100 is not registered. But"
                + " 999_000_000_000_100 is, with Tideline: that number is one slip away,"
                + " and the details match.");
    assertThat(shown(told.steps().get(2)))
        .isEqualTo(
            "If it is 999_000_000_000_100: read the chip again. When it shows"
                + " 999_000_000_001_100, ask them to have the number put right with Tideline.");
    assertThat(told.calls()).map(Callee::name).containsExactly("Mara Linden", "Tideline");
    assertThat(told.toString()).doesNotContain("Jonas");
  }

  @Test
  void the_purchaser_of_a_chip_without_an_animal_has_no_record_and_calls_nobody() {
    FollowUp told =
        told(
            FindingStory.of(FindingKind.TRAIL_ENDS_AT_PURCHASER, CLINIC, 7)
                .because(Part.SUPPLIED, "2025-06-01", BEACON, "B-1", new Who.Organisation(CLINIC)));

    assertThat(shown(told.wrong()))
        .isEqualTo(
            "Chip 999_000_000_000_007 was supplied to you, and it is in use. No record tells whose"
                + " animal carries it.");
    assertThat(told.calls()).isEmpty();
    assertThat(told.steps()).hasSize(3);
    assertThat(shown(told.evidence().get(0)))
        .startsWith("On 1 June 2025, chip 999_000_000_000_007 was supplied to ");
  }

  @Test
  void a_box_is_told_with_how_many_numbers_nobody_knows_and_the_first_three() {
    assertThat(shown(told(FindingStory.unaccounted(CLINIC, 100, 50, 1_234)).wrong()))
        .isEqualTo(
            "Of the chips 999_000_000_000_100 to 999_000_000_000_149, 1,234 numbers are in no record"
                + " that we know. The first are 999_000_000_000_100, 999_000_000_000_101 and"
                + " 999_000_000_000_102.");
    assertThat(shown(told(FindingStory.unaccounted(CLINIC, 100, 50, 1)).wrong()))
        .isEqualTo(
            "Of the chips 999_000_000_000_100 to 999_000_000_000_149, one number is in no record"
                + " that we know: 999_000_000_000_100.");
    FollowUp box = told(FindingStory.unaccounted(CLINIC, 100, 50, 2));
    assertThat(shown(box.animal())).isEqualTo("Chips from 999_000_000_000_100 on");
    assertThat(box.record()).isEmpty();
    assertThat(box.calls()).isEmpty();
  }

  @Test
  void registries_that_disagree_are_named_and_both_can_be_called() {
    FollowUp told =
        told(
            FindingStory.of(FindingKind.REGISTRIES_DISAGREE, CLINIC, 7)
                .named("Nuk")
                .with(mara)
                .registered(TIDELINE, jonas)
                .registered(BEACON, new Who.Organisation(CLINIC)));

    assertThat(shown(told.wrong()))
        .startsWith("Nuk is registered with Tideline and ")
        .contains(", to different contacts: a person registered with Tideline and ");
    assertThat(told.calls()).hasSize(3);
  }

  @Test
  void other_kinds_speak_of_the_keeper_and_the_number() {
    assertThat(wrong(FindingKind.PREPAID_UNUSED))
        .isEqualTo(
            "Nuk is with Mara Linden. Chip 999_000_000_000_007 is not registered, though a"
                + " registration was paid for with a chip.");
    assertThat(wrong(FindingKind.NON_ISO_ONLY))
        .isEqualTo(
            "Nuk is with Mara Linden. Its only chip is of an older kind: 999_000_000_000_007.");
    assertThat(
            shown(told(story(FindingKind.REGISTERED_ELSEWHERE).registered(TIDELINE, mara)).wrong()))
        .isEqualTo(
            "Nuk is registered to the right person, with Tideline. Whoever reads number"
                + " 999_000_000_000_007 would ask another registry.");
  }

  private String wrong(FindingKind kind) {
    return shown(told(story(kind)).wrong());
  }

  /** Numbers in groups that stay together. */
  private static String shown(String text) {
    return text.replace('\u00a0', '_');
  }

  private FindingStory story(FindingKind kind) {
    return FindingStory.of(kind, CLINIC, 7).named("Nuk").with(mara);
  }

  private FollowUp told(FindingStory story) {
    return FollowUpLists.of(Coast.run(story), Coast.DIRECTORY, coast.vault, texts)
        .get(0)
        .bands()
        .get(0)
        .tasks()
        .get(0)
        .followUps()
        .get(0);
  }
}
