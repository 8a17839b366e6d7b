package withers.chip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import withers.chip.Reading.Accepted;
import withers.chip.Reading.Guessed;
import withers.chip.Reading.Truncated;

/**
 * What a damaged text may have been: exactly these numbers, in the golden tables beside the test.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DamagedNumbersTest {

  private final ChipNumberReader reader = new ChipNumberReader(true);

  @ParameterizedTest
  @CsvFileSource(resources = "guessed.csv", numLinesToSkip = 1, delimiter = '|')
  void have_exactly_these_candidates(String text, String numbers, String repairs) {
    assertThat(reader.read(text)).isEqualTo(new Guessed(text, candidates(numbers, repairs)));
  }

  @Test
  void reach_every_repair() throws IOException {
    try (var table = getClass().getResourceAsStream("guessed.csv")) {
      String golden = new String(table.readAllBytes(), StandardCharsets.UTF_8);
      assertThat(EnumSet.allOf(Repair.class)).allMatch(repair -> golden.contains(repair.name()));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\t", "\u00A0", " \u2028 "})
  void may_be_two_numbers_on_two_lines(String parting) {
    String text = "999012345678901" + parting + "999000000001008";
    assertThat(reader.read(text))
        .isEqualTo(
            new Guessed(
                text,
                candidates(
                    "999000000001008 999012345678901",
                    "ONE_OF_SEVERAL_NUMBERS ONE_OF_SEVERAL_NUMBERS")));
  }

  /** Every assigned code below 100 is a country whose leading zeros a spreadsheet drops. */
  @Test
  void get_back_the_leading_zeros_of_thirty_countries() {
    List<Integer> codes =
        IntStream.range(0, 100)
            .filter(code -> CountryCodes.status(code) == CountryCodes.Status.ASSIGNED)
            .boxed()
            .toList();
    assertThat(codes).hasSize(30);
    for (int code : codes) {
      ChipNumber number = ChipNumber.iso(code, 12345678901L);
      String written = number.display();
      String eaten = String.valueOf(Long.parseLong(written));
      assertThat(reader.read(written)).isEqualTo(new Accepted(number, Set.of()));
      assertThat(reader.read(eaten))
          .isEqualTo(
              new Guessed(eaten, List.of(new Candidate(number, Repair.LEADING_ZEROS_RESTORED))));
    }
  }

  @Test
  void offer_no_candidate_that_the_reader_would_refuse() {
    ChipNumberReader withoutTests = new ChipNumberReader(false);
    assertThat(withoutTests.read("9990123456789O1").kind()).isEqualTo(Reading.Kind.REFUSED);
    assertThat(withoutTests.read("9.99112E+14").kind()).isEqualTo(Reading.Kind.REFUSED);
    assertThat(withoutTests.read("999012345678901 / 999000000001008").kind())
        .isEqualTo(Reading.Kind.REFUSED);
    assertThat(withoutTests.read("8000F9E7DD9F0001"))
        .isEqualTo(
            new Guessed(
                "8000F9E7DD9F0001",
                List.of(
                    new Candidate(ChipNumber.parse("998257289027585"), Repair.WORD_AS_RECEIVED))));
  }

  /** The same word from both ends is no ambiguity, and a plain word outweighs a possible one. */
  @ParameterizedTest
  @CsvSource({
    "8000F9C0039F0001, 999000060751873",
    "8000F9DDD7210011, 999128163315729",
    "880084EBBB9F0001, 999128163315729",
  })
  void are_no_guess_where_one_bit_order_is_likelier(String text, String display) {
    assertThat(reader.read(text)).isEqualTo(new Accepted(ChipNumber.parse(display), Set.of()));
  }

  @ParameterizedTest
  @CsvFileSource(resources = "truncated.csv", numLinesToSkip = 1, delimiter = '|')
  void keep_the_digits_that_survive(String text, String surviving, int lost) {
    assertThat(reader.read(text)).isEqualTo(new Truncated(text, surviving, lost));
  }

  /** Spreadsheet behaviour from the facts of the trade, found with Apache POI. */
  @ParameterizedTest
  @CsvSource({
    "9.85112E+14, 985112345678903, true",
    "9.85112E+14, 985112000000000, true",
    "36012300000000, 036012345678901, true",
    "36012300000000, 036012300000000, true",
    "3.60123E+13, 036012345678901, true",
  })
  void admit_what_a_spreadsheet_may_have_shown(String text, String display, boolean admitted) {
    Truncated reading = (Truncated) reader.read(text);
    assertThat(reading.admits(ChipNumber.parse(display))).isEqualTo(admitted);
  }

  @ParameterizedTest
  @CsvSource({
    "9991123456, 5, 999112345549999, false",
    "9991123456, 5, 999112345550000, true",
    "9991123456, 5, 999112345699999, true",
    "9991123456, 5, 999112345700000, false",
    "123457, 3, 123456499, false",
    "123457, 3, 123456500, true",
    "123457, 3, 123457999, true",
    "212555, 4, 2125550100, true",
    "212555, 4, 212555010A, false",
    "212555, 4, 212555010, false",
    "0, 14, 004000000000000, true",
  })
  void admit_half_a_unit_below_and_a_whole_one_above(
      String surviving, int lost, String display, boolean admitted) {
    Truncated truncated = new Truncated("", surviving, lost);
    assertThat(truncated.admits(ChipNumber.parse(display))).isEqualTo(admitted);
  }

  @Test
  void refuse_a_truncation_that_no_kind_of_number_has() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Truncated("", "999", 11))
        .withMessage(
            "Expected surviving and lost digits that make 9, 10 or 15, but found '999' and 11");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Truncated("", "99901234567890x", 0))
        .withMessage(
            "Expected surviving and lost digits that make 9, 10 or 15,"
                + " but found '99901234567890x' and 0");
  }

  @Test
  void refuse_a_guess_without_candidates() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Guessed("", List.of()))
        .withMessage("Expected at least one candidate, but found none");
  }

  @Test
  void are_guessed_in_order_and_each_number_once() {
    Candidate small = new Candidate(ChipNumber.nineDigit(1), Repair.LETTER_O_READ_AS_0);
    Candidate large = new Candidate(ChipNumber.nineDigit(2), Repair.LEADING_ZEROS_RESTORED);
    Candidate again = new Candidate(ChipNumber.nineDigit(1), Repair.LEADING_ZEROS_RESTORED);
    assertThat(new Guessed("", List.of(large, small, again)).candidates())
        .containsExactly(again, large);
  }

  private static List<Candidate> candidates(String numbers, String repairs) {
    String[] displays = numbers.split(" ");
    String[] names = repairs.split(" ");
    List<Candidate> candidates = new ArrayList<>();
    for (int i = 0; i < displays.length; i++) {
      candidates.add(new Candidate(ChipNumber.parse(displays[i]), Repair.valueOf(names[i])));
    }
    return candidates;
  }
}
