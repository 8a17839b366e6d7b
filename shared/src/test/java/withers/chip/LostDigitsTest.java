package withers.chip;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class LostDigitsTest {

  private static final int SEEDS = 200;

  /**
   * What a spreadsheet makes of 985112345678903 and 036012345678901, tried with Apache POI; the
   * rows under 999 and with nine digits follow the same way and are invented.
   */
  @ParameterizedTest
  @CsvSource({
    "9.85112E+14, 985112, 9",
    "985112000000000, 985112, 9",
    "36012300000000, 0360123, 8",
    "9.99E+14, 999, 12",
    "1.00001E+08, 100001, 3",
  })
  void a_text_shows_which_digits_survive(String written, String surviving, int lost) {
    LostDigits expected = new LostDigits(surviving, lost);
    assertThat(
            LostDigits.of(written).or(() -> LostDigits.of(ChipNumber.parse(written))).orElseThrow())
        .isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource({"999O12345678901", "36012345678901", "9.99012345678901E+14"})
  void a_text_with_all_its_digits_has_lost_none(String written) {
    assertThat(LostDigits.of(written)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "999012345600000, false",
    "999012345000000, true",
    "999000000000000, true",
    "100000000, false",
    "1000000000, false",
  })
  void six_zeros_at_the_end_of_an_iso_number_may_stand_for_others(String display, boolean may) {
    ChipNumber number = ChipNumber.parse(display);
    assertThat(LostDigits.endsInZeros(number)).isEqualTo(may);
    assertThat(LostDigits.of(number).isPresent()).isEqualTo(may);
  }

  @Test
  void what_may_have_been_cut_short_lies_between_the_bounds() {
    for (long seed = 0; seed < SEEDS; seed++) {
      Random random = new Random(seed);
      ChipNumber number = decimal(random);
      String display = number.display();
      int surviving = 1 + random.nextInt(display.length() - 1);
      LostDigits cut =
          new LostDigits(display.substring(0, surviving), display.length() - surviving);

      assertThat(cut.admits(number)).as("seed " + seed).isTrue();
      assertThat(number).as("seed " + seed).isBetween(cut.least(), cut.most());
    }
  }

  @Test
  void a_number_beyond_the_bounds_is_not_admitted() {
    for (long seed = 0; seed < SEEDS; seed++) {
      Random random = new Random(seed);
      LostDigits cut = LostDigits.of(zeroed(random)).orElseThrow();
      ChipNumber other = RandomNumbers.iso(random, 999);
      boolean between = other.compareTo(cut.least()) >= 0 && other.compareTo(cut.most()) <= 0;

      assertThat(cut.admits(other)).as("seed " + seed).isEqualTo(between);
    }
  }

  /** Under one code, so that the other number has a chance to be admitted. */
  private static ChipNumber zeroed(Random random) {
    return ChipNumber.iso(999, random.nextInt(27) * 10_000_000_000L);
  }

  private static ChipNumber decimal(Random random) {
    return random.nextBoolean()
        ? RandomNumbers.iso(random, 1 + random.nextInt(999))
        : ChipNumber.nineDigit(random.nextInt(1_000_000_000));
  }
}
