package withers.ingest.xlsx;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.chip.ChipNumber;
import withers.chip.ChipNumberReader;
import withers.chip.Reading;
import withers.ingest.rows.Typed;

/** The published check values of docs/chip-numbers.md stand under codes that real animals carry. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class NumberTextTest {

  private static final ChipNumberReader NUMBERS = new ChipNumberReader(true);

  @ParameterizedTest
  @CsvSource({
    "985112345678903, 985112345678903",
    "9.85112345678903E14, 985112345678903",
    "985112345678903.0, 985112345678903",
    "36012345678901, 36012345678901",
    "985112000000000, 9.85112E+14",
    "36012300000000, 3.60123E+13",
    "900000000000000, 9E+14",
    "9990123456789012, 9.99012345678901E+15",
    "12345678901234567890, 1.23456789012346E+19",
    "5550100, 5550100",
    "100000000000, 100000000000",
    "-5, -5",
    "0, 0",
    "3.0000000000000004, 3"
  })
  void writes_whole_numbers(BigDecimal number, String text) {
    assertThat(NumberText.of(number)).isEqualTo(new NumberText(text, Typed.TEXT));
  }

  @ParameterizedTest
  @CsvSource({
    "985112345678903.5, 985112345678904",
    "98511234567890.5, 98511234567890.5",
    "12345678.9, 12345678.9",
    "0.30000000000000004, 0.3",
    "1E+400, 1E+400",
    "1E-400, 1E-400"
  })
  void writes_others_as_fractions(BigDecimal number, String text) {
    assertThat(NumberText.of(number)).isEqualTo(new NumberText(text, Typed.FRACTION));
  }

  @Test
  void a_chip_number_that_is_still_whole_is_read_digit_by_digit() {
    assertThat(NUMBERS.read(NumberText.of(new BigDecimal("985112345678903")).text()))
        .isInstanceOfSatisfying(
            Reading.Accepted.class,
            accepted ->
                assertThat(accepted.number()).isEqualTo(ChipNumber.parse("985112345678903")));
  }

  @ParameterizedTest
  @CsvSource({
    "985112345678903, 9.85112E+14, 985112000000000, 985112",
    "036012345678901, 3.60123E+13, 36012300000000, 0360123"
  })
  void what_a_spreadsheet_shows_and_gives_back_is_known_to_have_lost_digits(
      String number, String shown, BigDecimal back, String surviving) {
    DataFormatter spreadsheet = new DataFormatter(java.util.Locale.ROOT);
    assertThat(spreadsheet.formatRawCellContents(Double.parseDouble(number), 0, "General"))
        .isEqualTo(shown);
    assertThat(new BigDecimal(shown)).isEqualByComparingTo(back);

    assertThat(NUMBERS.read(NumberText.of(back).text()))
        .isInstanceOfSatisfying(
            Reading.Truncated.class,
            cut -> {
              assertThat(cut.survivingDigits()).isEqualTo(surviving);
              assertThat(cut.admits(ChipNumber.parse(number))).isTrue();
            });
  }
}
