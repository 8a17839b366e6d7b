package withers.chip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ChipNumberTest {

  private static final long SEED = 11784;

  @ParameterizedTest
  @CsvSource({
    "999, 12345678901, 999012345678901",
    "36, 12345678901, 036012345678901",
    "1, 0, 001000000000000",
    "999, 274877906943, 999274877906943",
  })
  void shows_an_iso_number_as_fifteen_digits(int code, long national, String display) {
    ChipNumber number = ChipNumber.iso(code, national);
    assertThat(number.display()).isEqualTo(display);
    assertThat(number).hasToString(display);
    assertThat(number.kind()).isEqualTo(ChipNumber.Kind.ISO);
    assertThat(number.code()).isEqualTo(code);
    assertThat(number.nationalCode()).isEqualTo(national);
  }

  @Test
  void packs_an_iso_number_as_the_low_48_bits_of_the_iso_word() {
    // 8000F9C2DFDC1C35 in the table of docs/chip-numbers.md, from ISO11784Tools' tests.
    assertThat(ChipNumber.iso(999, 12345678901L).packed()).isEqualTo(0xF9C2DFDC1C35L);
  }

  @Test
  void keeps_leading_zeros_of_the_older_kinds() {
    assertThat(ChipNumber.nineDigit(7).display()).isEqualTo("000000007");
    assertThat(ChipNumber.tenCharacter("0000000a1f").display()).isEqualTo("0000000A1F");
    assertThat(ChipNumber.tenCharacter("0123456789").display()).isEqualTo("0123456789");
    assertThat(ChipNumber.tenCharacter("zzzzzzzzzz").display()).isEqualTo("ZZZZZZZZZZ");
  }

  @Test
  void orders_by_kind_then_number() {
    List<ChipNumber> ordered =
        List.of(
            ChipNumber.iso(1, ChipNumber.LARGEST_NATIONAL_CODE),
            ChipNumber.iso(2, 0),
            ChipNumber.iso(999, 274877906943L),
            ChipNumber.nineDigit(0),
            ChipNumber.nineDigit(999_999_999),
            ChipNumber.tenCharacter("0000000000"),
            ChipNumber.tenCharacter("000000000A"),
            ChipNumber.tenCharacter("ZZZZZZZZZZ"));
    List<ChipNumber> shuffled = new ArrayList<>(ordered);
    Collections.shuffle(shuffled, new Random(SEED));
    Collections.sort(shuffled);
    assertThat(shuffled).isEqualTo(ordered);
    assertThat(ordered).extracting(ChipNumber::packed).isSorted();
  }

  @Test
  void takes_back_what_it_packs_and_shows() {
    Random random = new Random(SEED);
    for (int i = 0; i < 100_000; i++) {
      ChipNumber number = RandomNumbers.anyKind(random);
      assertThat(ChipNumber.ofPacked(number.packed())).as("seed %d", SEED).isEqualTo(number);
      assertThat(ChipNumber.parse(number.display())).as("seed %d", SEED).isEqualTo(number);
    }
  }

  @ParameterizedTest
  @ValueSource(
      longs = {
        0, // code 000
        (1L << 38) - 1, // code 000, every other bit set
        1000L << 38, // a code of four digits
        1L << 60 | 1_000_000_000L, // ten digits as nine
        2L << 60 | 3_656_158_440_062_976L, // eleven characters as ten
        3L << 60, // no such kind
        -1
      })
  void refuses_a_long_that_no_number_packs_into(long packed) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ChipNumber(packed))
        .withMessage("Expected a packed chip number, but found 0x" + Long.toHexString(packed));
  }

  @Test
  void refuses_parts_out_of_range() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ChipNumber.iso(0, 1))
        .withMessage("Expected a country or manufacturer code from 1 to 999, but found 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ChipNumber.iso(1000, 1))
        .withMessage("Expected a country or manufacturer code from 1 to 999, but found 1000");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ChipNumber.iso(999, 274877906944L))
        .withMessage("Expected a national code from 0 to 274877906943, but found 274877906944");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ChipNumber.nineDigit(-1))
        .withMessage("Expected a nine-digit number from 0 to 999999999, but found -1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ChipNumber.tenCharacter("12345-7890"))
        .withMessage("Expected ten digits or letters from A to Z, but found '12345-7890'");
  }

  @ParameterizedTest
  @ValueSource(strings = {"00000000ß1", "000000000ı", "000000000ſ", "00000000٣", "", "123456789"})
  void takes_no_letters_but_a_to_z_for_ten_characters(String text) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ChipNumber.tenCharacter(text))
        .withMessage("Expected ten digits or letters from A to Z, but found '" + text + "'");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "", "12345678", "99901234567890", "9990123456789012", "99901234567890x",
        "+99012345678901", "12345678x", "000000000a", "00000-0000", "٩٩٩٠١٢٣٤٥٦٧٨٩٠١"
      })
  void parses_nothing_but_the_display_form(String text) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ChipNumber.parse(text))
        .withMessage(
            "Expected a chip number of 15 digits, 9 digits or 10 digits and capital letters,"
                + " but found '"
                + text
                + "'");
  }

  @Test
  void has_no_code_outside_iso() {
    ChipNumber older = ChipNumber.nineDigit(123456789);
    assertThatIllegalStateException()
        .isThrownBy(older::code)
        .withMessage("Expected an ISO number, but found 123456789");
    assertThatIllegalStateException()
        .isThrownBy(older::nationalCode)
        .withMessage("Expected an ISO number, but found 123456789");
  }
}
