package withers.priority;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.fact.Species;
import withers.finding.FindingKind;
import withers.finding.Priority;

/** The table of docs/priorities.md. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class PrioritiesTest {
  private static final LocalDate AS_OF = LocalDate.of(2026, 10, 1);

  /**
   * Owner reached without and with a problem: dogs 93 and 70, cats 75 and 41 percent; reclaimed
   * without a chip: dogs 37, cats 5 percent (Lancaster et al. 2015, doi 10.3390/ani5020332).
   */
  @ParameterizedTest
  @CsvSource({
    "found-waiting,  DOG, 10,  today,         70000",
    "found-waiting,  CAT, 10,  today,         250000",
    "lost-unreachable, DOG, 10, today,        630000",
    "lost-unreachable, CAT, 10, today,        950000",
    "number-on-two-animals, DOG, 500, this-week, 3000",
    "custody-unclear, CAT, 500, this-month,   8850",
    "chips-diverge,  DOG, 500, this-week,     3000",
    "contact-behind, CAT, 60,  this-week,     35400",
    "contact-behind, CAT, 120, this-week,     35400",
    "contact-behind, CAT, 121, this-month,    17700",
    "contact-behind, HORSE, 500, this-month,  4450",
    "placeholder-contact, DOG, 60, this-week, 25200",
    "placeholder-contact, DOG, 121, this-month, 12600",
    "mistyped-registration, CAT, 60, this-week, 57000",
    "records-behind, DOG, 500, this-month,    3000",
    "prepaid-unused, DOG, 500, this-month,    12600",
    "unregistered,   DOG, 500, this-month,    12600",
    "unregistered,   CAT, 60,  this-week,     57000",
    "registries-disagree, DOG, 500, this-month, 3000",
    "trail-ends-at-purchaser, DOG, 500, this-month, 12600",
    "not-detected,   DOG, 500, this-month,    6300",
    "details-differ, DOG, 500, when-possible, 1500",
    "registered-elsewhere, DOG, 500, when-possible, 3150",
    "scan-overdue,   DOG, 500, when-possible, 300",
    "non-iso-only,   CAT, 500, when-possible, 2850",
    "registered-after-death, DOG, 60, when-possible, 0"
  })
  void band_and_harm_follow_the_table(
      String kind, Species species, int daysSinceStart, String band, long harm) {
    Priority priority = priority(kind, species, daysSinceStart, List.of("address"));

    assertThat(priority.band().word()).isEqualTo(band);
    assertThat(priority.harm()).isEqualTo(harm);
  }

  /**
   * The same figures for animals whose data have a problem; the other weights are our judgement.
   */
  @ParameterizedTest
  @CsvSource({
    "DOG, false, this-month,    3000",
    "CAT, false, this-month,    8850",
    "DOG, true,  when-possible, 600",
    "CAT, true,  when-possible, 1770"
  })
  void a_damaged_number_is_less_urgent_when_it_found_its_animal(
      Species species, boolean isFound, String band, long harm) {
    Priority priority = Priorities.ofDamagedNumber(species, isFound);

    assertThat(priority.band().word()).isEqualTo(band);
    assertThat(priority.harm()).isEqualTo(harm);
  }

  @Test
  void a_stray_that_is_still_held_comes_before_one_that_may_be_placed() {
    Priority priority = priority("found-waiting", Species.CAT, 500, List.of());

    assertThat(Priorities.whileHeld(priority).harm()).isEqualTo(2 * priority.harm());
    assertThat(Priorities.whileHeld(priority).band()).isEqualTo(priority.band());
  }

  @Test
  void a_phone_that_differs_weighs_four_times_as_much_as_another_detail() {
    assertThat(priority("details-differ", Species.DOG, 500, List.of("phone")).harm())
        .isEqualTo(4 * priority("details-differ", Species.DOG, 500, List.of("email")).harm());
  }

  @Test
  void the_arithmetic_names_its_factors_in_order() {
    assertThat(priority("contact-behind", Species.CAT, 60, List.of()).arithmetic())
        .containsExactly(
            new Priority.Factor("lost-within-a-year", 30_000),
            new Priority.Factor("contact-fails", 590_000),
            new Priority.Factor("recent-hand-over", 2_000_000));
  }

  private static Priority priority(String kind, Species species, int days, List<String> fields) {
    Optional<LocalDate> start = Optional.of(AS_OF.minusDays(days));
    return Priorities.of(FindingKind.of(kind), species, start, fields, AS_OF);
  }
}
