package withers.chip;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import withers.chip.Reading.Refused;

/** Every refusal with its whole message. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class RefusedTextsTest {

  private static final String LOOK_AGAIN =
      "; compare it with the papers of the chip or scan the animal again";

  private final ChipNumberReader reader = new ChipNumberReader(true);

  private record Row(String text, RefusalReason reason, String message) {}

  private static Stream<Row> refused() {
    return Stream.of(
            wrongLength(),
            beyond38Bits(),
            invalidCodes(),
            Stream.of(unknownLetters()),
            implausibleWords(),
            otherTexts())
        .flatMap(rows -> rows);
  }

  private static Stream<Row> wrongLength() {
    return Stream.of(
        wrongLength("7", "1 digit"),
        wrongLength("12.0", "3 digits"),
        wrongLength("1234567", "7 digits"),
        wrongLength("12345678901", "11 digits"),
        wrongLength("999012345678", "12 digits"),
        wrongLength("1234567890123", "13 digits"), // not a number: from the facts of the trade
        wrongLength("99901234567890", "14 digits"),
        wrongLength("9990123456789012", "16 digits"),
        wrongLength("99901234567890123", "17 digits"),
        wrongLength("999-012-345-678-90", "14 digits"),
        wrongLength("1.5E+03", "4 digits"),
        wrongLength("1E+15", "16 digits"),
        wrongLength("9.99012E+13", "14 digits"),
        wrongLength("99901200000000", "14 digits"),
        wrongLength("123.4567890123", "13 digits"),
        wrongLength("12".repeat(100), "200 digits"));
  }

  private static Row wrongLength(String text, String found) {
    return new Row(
        text,
        RefusalReason.WRONG_LENGTH,
        "Expected 15 digits, or 9 or 10 on an older chip, but found " + found + LOOK_AGAIN);
  }

  private static Stream<Row> beyond38Bits() {
    return Stream.of(
        beyond38Bits("999274877906944", "274877906944"),
        beyond38Bits("985999999999999", "999999999999"),
        beyond38Bits("ABD.4567890123", "298089775395"), // not a number: from the facts of the trade
        beyond38Bits("3E7.4000000000", "274877906944"),
        beyond38Bits("AUS300000000000", "300000000000"),
        beyond38Bits("999S00000000001", "500000000001"),
        beyond38Bits("9.99345E+14", "345000000000"),
        beyond38Bits("9.99345678901234E+14", "345678901234"));
  }

  private static Row beyond38Bits(String text, String found) {
    return new Row(
        text,
        RefusalReason.NATIONAL_CODE_BEYOND_38_BITS,
        "Expected a national code (the last twelve digits) of at most 274877906943, but found "
            + found
            + ", so a digit is mistyped"
            + LOOK_AGAIN);
  }

  private static Stream<Row> invalidCodes() {
    return Stream.of(
        invalidCode("000012345678901", "000"),
        invalidCode("001012345678901", "001"),
        invalidCode("003012345678901", "003"),
        invalidCode("895012345678901", "895"),
        invalidCode("899012345678901", "899"),
        invalidCode("3E8.02DFDC1C35", "1000"),
        invalidCode("3FF.02DFDC1C35", "1023"));
  }

  private static Row invalidCode(String text, String found) {
    return new Row(
        text,
        RefusalReason.INVALID_COUNTRY_CODE,
        "Expected a country code from 004 to 894 or a manufacturer code from 900 to 998 (the first"
            + " three digits), but found "
            + found
            + LOOK_AGAIN);
  }

  private static Row unknownLetters() {
    return new Row(
        "XYZ012345678901",
        RefusalReason.UNKNOWN_COUNTRY_LETTERS,
        "Expected the three letters of a country (ISO 3166-1) before twelve digits, but found"
            + " letters that no country has; write the three digits of the code instead");
  }

  private static Stream<Row> implausibleWords() {
    return Stream.of(
            "0000F9C2DFDC1C35", // animal flag clear
            "8004F9C2DFDC1C36", // a reserved bit set
            "8000014000C0FFEE", // code 005
            "80000000DEADBEEF", // code 000
            "FFFFFFFFFFFFFFFF")
        .map(
            text ->
                new Row(
                    text,
                    RefusalReason.IMPLAUSIBLE_ISO_WORD,
                    "Expected the 16 hexadecimal digits of an animal's ISO 11784 word, but found"
                        + " neither in either bit order the animal flag set, the reserved bits"
                        + " clear and a valid code; write the 15 digits that the scanner shows"
                        + " instead"));
  }

  private static Stream<Row> otherTexts() {
    return Stream.of(
        notANumber("Rex", "3 characters, 0"),
        notANumber("q", "1 character, 0"),
        notANumber("Retrievers", "10 characters, 0"),
        notANumber("chip 999012345678901", "20 characters, 15"),
        notANumber("+1 (212) 555-0100", "17 characters, 11"),
        notANumber("999012345678901 / none", "22 characters, 15"),
        notANumber("999012345678901 / Rex 1234567", "29 characters, 22"),
        notANumber("999012345678901/", "16 characters, 15"),
        notANumber("999,012,345,678,901", "19 characters, 15"),
        notANumber("99901234567890\u00E9", "15 characters, 14"),
        notANumber("9990123456789\u00BD", "14 characters, 13"),
        notANumber("9.9901234E+03", "13 characters, 10"),
        notANumber("9.99112E-14", "11 characters, 8"),
        notANumber("1/2/3/4/5", "9 characters, 5"),
        notANumber("99901234567890X", "15 characters, 14"),
        notANumber(
            "999000000000001/999000000000002/999000000000003/999000000000004/999000000000005",
            "79 characters, 75"),
        new Row(
            "9".repeat(201),
            RefusalReason.TOO_LONG,
            "Expected a chip number, but found a text of 201 characters; write the number alone, as"
                + " the scanner shows it"));
  }

  private static Row notANumber(String text, String found) {
    return new Row(
        text,
        RefusalReason.NOT_A_NUMBER,
        "Expected a chip number of 15 digits, 9 digits or 10 characters, but found a text of "
            + found
            + " of them digits; write the number alone, as the scanner shows it");
  }

  @ParameterizedTest
  @MethodSource("refused")
  void say_what_was_expected_and_found_and_what_to_do(Row row) {
    assertThat(reader.read(row.text())).isEqualTo(new Refused(row.reason(), row.message()));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "999012345678901",
        "999 012 345 678 901",
        "8000F9C2DFDC1C35",
        "AC383BFB439F0001",
        "3E7.02DFDC1C35",
        "999O12345678901",
        "9.99012345678901E+14",
        "9.99112E+14"
      })
  void under_the_test_code_unless_a_demonstration_takes_them(String text) {
    assertThat(new ChipNumberReader(false).read(text))
        .isEqualTo(
            new Refused(
                RefusalReason.TEST_CODE,
                "Expected a number that an animal can carry, but found code 999, which is for tests"
                    + " only; correct the record, or accept test numbers in the settings of a"
                    + " demonstration"));
  }

  @Test
  void cover_every_reason() {
    EnumSet<RefusalReason> covered = EnumSet.of(RefusalReason.TEST_CODE);
    refused().map(Row::reason).forEach(covered::add);
    assertThat(covered).isEqualTo(EnumSet.allOf(RefusalReason.class));
  }

  /** The facts of the trade call this one beyond 38 bits; it is the commonest filler, too. */
  @Test
  void leave_all_nines_to_the_placeholders() {
    assertThat(reader.read("999999999999999")).isEqualTo(new Reading.NoNumber(Placeholder.NINES));
  }
}
