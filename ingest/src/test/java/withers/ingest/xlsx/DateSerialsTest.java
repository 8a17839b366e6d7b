package withers.ingest.xlsx;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Random;
import org.apache.poi.ss.usermodel.DateUtil;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.ingest.rows.Typed;

/** Examples of ISO/IEC 29500-1, 18.17.4.1 (from memory), and Apache POI as the second reader. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DateSerialsTest {

  private static final long SEED = 20310131;
  private static final long LAST_1900 = 2_958_465;
  private static final long LAST_1904 = 2_957_003;

  @ParameterizedTest
  @CsvSource({
    "1, 1900-01-01",
    "59, 1900-02-28",
    "61, 1900-03-01",
    "3687, 1910-02-03",
    "44197, 2021-01-01",
    "2958465, 9999-12-31"
  })
  void counts_from_1900(long serial, LocalDate day) {
    assertThat(DateSerials.FROM_1900.day(serial)).isEqualTo(Typed.day(day));
  }

  @ParameterizedTest
  @CsvSource({
    "0, 1904-01-01",
    "1, 1904-01-02",
    "60, 1904-03-01",
    "2225, 1910-02-03",
    "2957003, 9999-12-31"
  })
  void counts_from_1904(long serial, LocalDate day) {
    assertThat(DateSerials.FROM_1904.day(serial)).isEqualTo(Typed.day(day));
  }

  @Test
  void refuses_the_29_February_1900_which_never_was() {
    assertThat(DateSerials.FROM_1900.day(60))
        .isEqualTo(Typed.unreadable("29 February 1900, a day that never was"));
  }

  @Test
  void takes_zero_of_1900_for_an_empty_date() {
    assertThat(DateSerials.FROM_1900.day(0)).isEqualTo(Typed.TEXT);
  }

  @Test
  void refuses_numbers_before_the_first_and_after_the_last_day() {
    Typed none = Typed.unreadable("a number that is no day");

    assertThat(DateSerials.FROM_1900.day(-1)).isEqualTo(none);
    assertThat(DateSerials.FROM_1900.day(LAST_1900 + 1)).isEqualTo(none);
    assertThat(DateSerials.FROM_1904.day(-1)).isEqualTo(none);
    assertThat(DateSerials.FROM_1904.day(LAST_1904 + 1)).isEqualTo(none);
  }

  @Test
  void agrees_with_another_reader_on_any_day() {
    Random random = new Random(SEED);
    for (int i = 0; i < 10_000; i++) {
      long serial = 61 + random.nextLong(LAST_1904 - 61);

      assertThat(DateSerials.FROM_1900.day(serial).day())
          .as("seed %d, serial %d", SEED, serial)
          .contains(DateUtil.getLocalDateTime((double) serial, false).toLocalDate());
      assertThat(DateSerials.FROM_1904.day(serial).day())
          .as("seed %d, serial %d", SEED, serial)
          .contains(DateUtil.getLocalDateTime((double) serial, true).toLocalDate());
    }
  }
}
