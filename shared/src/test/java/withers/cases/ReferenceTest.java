package withers.cases;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import withers.chip.ChipNumber;
import withers.id.OrganisationId;
import withers.id.SourceId;

/** What follow-ups are called on the phone. All numbers and names are invented. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ReferenceTest {

  private static final Anchor CHIP = new Anchor.Chip(ChipNumber.parse("999000000000100"));
  private static final Anchor CLINIC = new Anchor.Source(new SourceId("clinic"));

  private static CaseKey key(String rule, Anchor anchor, String actor, String record) {
    return new CaseKey(rule, anchor, new OrganisationId(actor), record);
  }

  /**
   * Expected values by Python's hashlib, from the sentence on {@link Reference}: the digest as one
   * number, its lowest five bits first.
   */
  @Test
  void is_made_of_the_last_forty_bits_of_the_key_s_digest() {
    assertThat(Reference.of(key("contact-behind", CHIP, "shelter", "s1"))).isEqualTo("6KD7-TZ7Q");
    assertThat(Reference.of(key("trail-ends-at-purchaser", CHIP, "clinic", "")))
        .isEqualTo("UTHG-X367");
    assertThat(Reference.of(key("number-damaged", CLINIC, "clinic", "\u00c4-7")))
        .isEqualTo("T3F4-YZK4");
  }

  @Test
  void is_another_when_any_part_of_the_key_is() {
    Set<String> references =
        Set.of(
            Reference.of(key("contact-behind", CHIP, "shelter", "s1")),
            Reference.of(key("details-differ", CHIP, "shelter", "s1")),
            Reference.of(key("contact-behind", CLINIC, "shelter", "s1")),
            Reference.of(key("contact-behind", CHIP, "clinic", "s1")),
            Reference.of(key("contact-behind", CHIP, "shelter", "s2")));

    assertThat(references).hasSize(5);
  }

  @Test
  void has_every_letter_but_those_that_are_taken_for_others() {
    Set<Integer> used =
        IntStream.range(0, 1_000)
            .mapToObj(i -> Reference.of(key("contact-behind", CHIP, "shelter", "s" + i)))
            .flatMap(reference -> reference.chars().boxed())
            .collect(Collectors.toCollection(HashSet::new));

    assertThat(used)
        .isEqualTo("-23456789ABCDEFGHJKLMNPQRSTUVWXYZ".chars().boxed().collect(Collectors.toSet()));
  }

  @ParameterizedTest
  @ValueSource(strings = {"6KD7-TZ7Q", "6kd7-tz7q", "6KD7TZ7Q", " 6kd7 tz7q ", "6kd7 - tz7Q"})
  void is_the_same_however_it_is_typed(String typed) {
    assertThat(Reference.plain(typed)).isEqualTo("6KD7TZ7Q");
  }

  @ParameterizedTest
  @CsvSource({"6KD7-TZ7Q, 6KD7-TZ7R", "6KD7-TZ7Q, 6KD7-TZ7"})
  void is_another_when_a_letter_is(String one, String other) {
    assertThat(Reference.plain(one)).isNotEqualTo(Reference.plain(other));
  }
}
