package withers.codec.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.finding.Band;
import withers.finding.RunOutline;
import withers.id.OrganisationId;

/** A run's numbers as they stand beside it. Invented. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class OutlineJsonTest {

  private static final String TEXT =
      "{\"version\":1,\"id\":\"2026-10-01-ab12\",\"asOf\":\"2026-10-01\",\"animals\":12"
          + ",\"findings\":{\"today\":1,\"when-possible\":4}"
          + ",\"opened\":3,\"closed\":{\"clinic\":2,\"shelter\":1}}";

  private static final RunOutline OUTLINE =
      new RunOutline(
          "2026-10-01-ab12",
          LocalDate.of(2026, 10, 1),
          12,
          Map.of(Band.WHEN_POSSIBLE, 4L, Band.TODAY, 1L),
          3,
          new TreeMap<>(
              Map.of(new OrganisationId("shelter"), 1L, new OrganisationId("clinic"), 2L)));

  @Test
  void is_written_on_one_line_in_order_of_bands_and_organisations() {
    assertThat(OutlineJson.write(OUTLINE)).isEqualTo(TEXT);
  }

  @Test
  void is_read_as_it_was_written() {
    assertThat(OutlineJson.read(TEXT)).contains(OUTLINE);
  }

  @Test
  void is_read_although_another_program_added_to_it() {
    assertThat(OutlineJson.read(TEXT.replace("{\"version\"", "{\"more\":[7],\"version\"")))
        .contains(OUTLINE);
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        // what is written; what stands there instead
        "`\"version\":1,`, `\"version\":2,`",
        "`\"version\":1,`, ``",
        "`\"version\":1,`, `\"version\":\"one\",`",
        "`\"id\":\"2026-10-01-ab12\",`, ``",
        "`\"id\":\"2026-10-01-ab12\"`, `\"id\":7`",
        "`2026-10-01\",\"animals`, `2026-13-01\",\"animals`",
        "`\"animals\":12`, `\"animals\":1.5`",
        "`\"animals\":12`, `\"animals\":99999999999999999999`",
        "`\"today\":1`, `\"today\":\"one\"`",
        "`\"today\":1`, `\"tomorrow\":1`",
        "`{\"today\":1,\"when-possible\":4}`, `[]`",
        "`\"opened\":3,`, ``",
        "`\"clinic\":2`, `\"clinic\":null`",
        "`\"clinic\":2`, `\"The Clinic\":2`",
        "`,\"closed\":{\"clinic\":2,\"shelter\":1}`, ``",
        "`}}`, `}`",
        "`{\"version\"`, `[{\"version\"`",
      })
  void is_not_read_when_it_is_damaged_or_of_a_newer_program(String written, String instead) {
    assertThat(TEXT).contains(written);

    assertThat(OutlineJson.read(TEXT.replace(written, instead))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {"``", "null", "7", "[]", "{}", "no JSON"})
  void is_not_read_from_other_text(String text) {
    assertThat(OutlineJson.read(text)).isEmpty();
  }
}
