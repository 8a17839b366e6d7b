package withers.chip;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import withers.chip.Reading.Accepted;
import withers.chip.Reading.NoNumber;
import withers.chip.Reading.Tentative;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ChipNumberReaderTest {

  private final ChipNumberReader reader = new ChipNumberReader(true);

  private Reading read(String text) {
    return reader.read(text);
  }

  private static Accepted accepted(String display, Warning... warnings) {
    return new Accepted(ChipNumber.parse(display), Set.of(warnings));
  }

  @Nested
  class Accepts {

    /** Spellings of the list in docs/chip-numbers.md; the numbers are under the test code. */
    @ParameterizedTest
    @ValueSource(
        strings = {
          "999012345678901",
          " 999012345678901\t",
          "999 012 345 678 901",
          "999-012-345-678-901",
          "999.012.345.678.901",
          "999*012*345*678*901",
          "999 0123 4567 8901",
          "9 9 9 0 1 2 3 4 5 6 7 8 9 0 1",
          "999 - 012345678901",
          "999\u00A0012\u00A0345\u00A0678\u00A0901", // non-breaking space
          "999\u2009012\u2009345\u2009678\u2009901", // thin space
          "999\u202F012\u202F345\u202F678\u202F901", // narrow non-breaking space
          "999\u3000012345678901", // ideographic space
          "999\u2011012\u2011345\u2011678\u2011901", // non-breaking hyphen
          "999\u2013012345678901", // en dash
          "999\u2212012345678901", // minus sign
          "\uFEFF999012345678901", // byte order mark
          "\u200E999012345678901\u200F", // direction marks
          "999\u00AD012345678901", // soft hyphen
          "'999012345678901",
          "\u2018999012345678901",
          "\u2019999012345678901",
          "=\"999012345678901\"",
          "999012345678901.0",
          "'999012345678901.0",
          "٩٩٩٠١٢٣٤٥٦٧٨٩٠١", // Arabic-Indic
          "९९९०१२३४५६७८९०१", // Devanagari
          "９９９０１２３４５６７８９０１", // full width
          "\uD835\uDFD7\uD835\uDFD7\uD835\uDFD7012345678901", // mathematical bold nines
          "8000F9C2DFDC1C35",
          "8000f9c2dfdc1c35",
          "8000 F9C2 DFDC 1C35",
          "AC383BFB439F0001",
          "3E7.02DFDC1C35",
          "3e7.02dfdc1c35"
        })
    void one_number_in_many_spellings(String spelling) {
      assertThat(read(spelling)).isEqualTo(accepted("999012345678901"));
    }

    @ParameterizedTest
    @CsvSource({
      "036012345678901, 36",
      "040012345678901, 40",
      "056012345678901, 56",
      "076012345678901, 76",
      "528000123456789, 528",
      "900123456789012, 900",
      "998274877906943, 998",
      "894000000000001, 894",
      "004000000000001, 4",
    })
    void codes_of_countries_and_manufacturers(String text, int code) {
      Accepted reading = accepted(text);
      assertThat(read(text)).isEqualTo(reading);
      assertThat(reading.number().code()).isEqualTo(code);
    }

    @ParameterizedTest
    @CsvSource({
      "AUS012345678901, 036012345678901",
      "AUT 012345678901, 040012345678901",
      "bel-0123-4567-8901, 056012345678901",
      "NLD000123456789, 528000123456789",
      "ISL012345678901, 352012345678901", // letters first, though I, S and L look like digits
    })
    void letters_of_a_country_before_twelve_digits(String text, String display) {
      assertThat(read(text)).isEqualTo(accepted(display));
    }

    @ParameterizedTest
    @CsvSource({
      "123456780, 123456780",
      "012345670, 012345670",
      "123*456*780, 123456780",
      "123 456 780, 123456780",
      "123456780.0, 123456780",
    })
    void nine_digits(String text, String display) {
      assertThat(read(text)).isEqualTo(accepted(display));
    }

    @ParameterizedTest
    @CsvSource({
      "0A1B2C3D4E, 0A1B2C3D4E",
      "0a1b2c3d4e, 0A1B2C3D4E",
      "0A1 B2C 3D4E, 0A1B2C3D4E",
      "123456789A, 123456789A",
      "12345678E9, 12345678E9", // no point after the first digit: not scientific notation
    })
    void ten_hexadecimal_characters(String text, String display) {
      assertThat(read(text)).isEqualTo(accepted(display));
    }

    @ParameterizedTest
    @CsvSource({
      "200012345678901", // Czechoslovakia
      "891012345678901", // Serbia and Montenegro, Yugoslavia
      "810012345678901", // USSR
      "005012345678901", // never a country
      "111012345678901",
    })
    void a_code_without_a_country_with_a_warning(String text) {
      assertThat(read(text))
          .isEqualTo(accepted(text, Warning.WITHDRAWN_OR_UNASSIGNED_COUNTRY_CODE));
    }

    @Test
    void letters_of_a_former_country_with_a_warning() {
      assertThat(read("CSK012345678901"))
          .isEqualTo(accepted("200012345678901", Warning.WITHDRAWN_OR_UNASSIGNED_COUNTRY_CODE));
      assertThat(read("BUR012345678901")).isEqualTo(accepted("104012345678901"));
    }

    /** What comes back from a spreadsheet that kept six digits: domain facts, found with POI. */
    @ParameterizedTest
    @ValueSource(strings = {"985112000000000", "999012345000000"})
    void six_trailing_zeros_with_a_warning(String text) {
      assertThat(read(text)).isEqualTo(accepted(text, Warning.SIX_OR_MORE_TRAILING_ZEROS));
    }

    @Test
    void five_trailing_zeros_without_a_warning() {
      assertThat(read("999012345600000")).isEqualTo(accepted("999012345600000"));
    }

    @Test
    void both_warnings_in_one_order() {
      Accepted reading = (Accepted) read("111000000000000");
      assertThat(reading.warnings())
          .containsExactly(
              Warning.WITHDRAWN_OR_UNASSIGNED_COUNTRY_CODE, Warning.SIX_OR_MORE_TRAILING_ZEROS);
    }
  }

  @Nested
  class Waits_for_corroboration {

    @ParameterizedTest
    @CsvSource({
      "2125550100, 2125550100", // a telephone number reserved for fiction
      "212-555-0100, 2125550100",
      "0212555010, 0212555010",
      "2125550100.0, 2125550100",
    })
    void of_ten_digits(String text, String display) {
      assertThat(read(text))
          .isEqualTo(
              new Tentative(
                  ChipNumber.parse(display),
                  "ten digits may also be a phone number, or an ISO number cut short"));
    }

    @Test
    void of_ten_characters_that_are_not_hexadecimal() {
      assertThat(read("xk1234567z"))
          .isEqualTo(
              new Tentative(
                  ChipNumber.parse("XK1234567Z"),
                  "letters beyond A to F are rare on a chip, and this may be another reference"));
    }
  }

  @Nested
  class Finds_no_number_in {

    @ParameterizedTest
    @CsvSource(
        ignoreLeadingAndTrailingWhitespace = false,
        value = {
          "'',BLANK",
          "'   ',BLANK",
          "'\u00A0\u2009\uFEFF',BLANK",
          "-,MARKS",
          "--,MARKS",
          "\u2014,MARKS",
          "?,MARKS",
          "...,MARKS",
          "/,MARKS",
          "'''',MARKS",
          "0,ZEROS",
          "0.0,ZEROS",
          "000000000,ZEROS",
          "000000000000000,ZEROS",
          "000-000-000-000-000,ZEROS",
          "0000000000000000,ZEROS",
          "0.00E+00,ZEROS",
          "999,NINES",
          "999999999,NINES",
          "999999999999999,NINES",
          "999 999 999 999 999,NINES",
          "111111111,REPEATED_DIGIT",
          "5555555555,REPEATED_DIGIT",
          "222222222222222,REPEATED_DIGIT",
          "123456789,COUNTED_UP",
          "012345678,COUNTED_UP",
          "1234567890,COUNTED_UP",
          "0123456789,COUNTED_UP",
          "123456789012345,COUNTED_UP",
          "012345678901234,COUNTED_UP",
          "none,WORD_FOR_NONE",
          "None.,WORD_FOR_NONE",
          "NOT CHIPPED,WORD_FOR_NONE",
          "not-chipped,WORD_FOR_NONE",
          "keine,WORD_FOR_NONE",
          "non puc\u00E9,WORD_FOR_NONE",
          "non puce\u0301,WORD_FOR_NONE",
          "n/a,WORD_FOR_UNKNOWN",
          "N.A.,WORD_FOR_UNKNOWN",
          "#N/A,WORD_FOR_UNKNOWN",
          "unknown,WORD_FOR_UNKNOWN",
          "(unbekannt),WORD_FOR_UNKNOWN",
          "ok\u00E4nd,WORD_FOR_UNKNOWN",
          "pending,WORD_FOR_LATER"
        })
    void a_placeholder(String text, Placeholder placeholder) {
      assertThat(read(text)).isEqualTo(new NoNumber(placeholder));
    }

    @Test
    void what_only_resembles_a_placeholder() {
      assertThat(read("222222222222223")).isEqualTo(accepted("222222222222223"));
      assertThat(read("234567890")).isEqualTo(accepted("234567890"));
    }
  }
}
