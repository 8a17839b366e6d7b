package withers.chip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class RangeNotationTest {

  @ParameterizedTest
  @CsvSource({
    "999000000000000-999000000000999, 999000000000000, 999000000000999",
    "' 999000000000000 - 999000000000999 ', 999000000000000, 999000000000999",
    "999000000001008, 999000000001008, 999000000001008",
    "000000001-000000099, 000000001, 000000099",
    "0A0B0C0D00-0A0B0C0DFF, 0A0B0C0D00, 0A0B0C0DFF",
    "9990*, 999000000000000, 999099999999999",
    "9992*, 999200000000000, 999274877906943",
    "999*, 999000000000000, 999274877906943",
    "9*, 900000000000000, 999274877906943",
    "0*, 001000000000000, 099274877906943",
    "00*, 001000000000000, 009274877906943",
    "99900000000100*, 999000000001000, 999000000001009",
  })
  void a_range_has_a_first_and_a_last_number(String text, String first, String last) {
    assertThat(RangeNotation.read(text))
        .isEqualTo(new NumberRange(ChipNumber.parse(first), ChipNumber.parse(last)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"000*", "9993*", "9992748779070*"})
  void a_prefix_that_no_number_starts_with_is_refused(String text) {
    assertThatThrownBy(() -> RangeNotation.read(text)).isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "*", "all", "999", "999-998", "999000000001008*", "999x*"})
  void what_is_no_range_is_refused(String text) {
    assertThatThrownBy(() -> RangeNotation.read(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "Expected a range such as 999000000000000-999000000000999 or 9990*, but found \"%s\"",
            text);
  }

  @Test
  void a_prefix_holds_exactly_the_numbers_that_start_with_it() {
    long seed = 11784;
    Random random = new Random(seed);
    for (int i = 0; i < 20_000; i++) {
      ChipNumber number =
          ChipNumber.iso(
              random.nextInt(1, 1000), random.nextLong(ChipNumber.LARGEST_NATIONAL_CODE + 1));
      String prefix = number.display().substring(0, random.nextInt(1, 15));
      ChipNumber other =
          ChipNumber.iso(
              random.nextInt(1, 1000), random.nextLong(ChipNumber.LARGEST_NATIONAL_CODE + 1));
      NumberRange range = RangeNotation.read(prefix + "*");
      assertThat(range.contains(number)).as("seed %d: %s in %s", seed, number, prefix).isTrue();
      assertThat(range.contains(other))
          .as("seed %d: %s in %s", seed, other, prefix)
          .isEqualTo(other.display().startsWith(prefix));
    }
  }
}
