package withers.chip;

import withers.chip.Reading.Refused;

/** The refusals and their messages, none of which repeats the letters of a text. */
final class Refusals {

  private static final String LOOK_AGAIN =
      "; compare it with the papers of the chip or scan the animal again";

  private Refusals() {}

  static Refused wrongLength(int digits) {
    return new Refused(
        RefusalReason.WRONG_LENGTH,
        "Expected 15 digits, or 9 or 10 on an older chip, but found "
            + digits
            + (digits == 1 ? " digit" : " digits")
            + LOOK_AGAIN);
  }

  static Refused nationalCodeBeyond38Bits(long found) {
    return new Refused(
        RefusalReason.NATIONAL_CODE_BEYOND_38_BITS,
        "Expected a national code (the last twelve digits) of at most 274877906943, but found "
            + found
            + ", so a digit is mistyped"
            + LOOK_AGAIN);
  }

  static Refused invalidCountryCode(int found) {
    return new Refused(
        RefusalReason.INVALID_COUNTRY_CODE,
        "Expected a country code from 004 to 894 or a manufacturer code from 900 to 998"
            + " (the first three digits), but found %03d".formatted(found)
            + LOOK_AGAIN);
  }

  static Refused unknownCountryLetters() {
    return new Refused(
        RefusalReason.UNKNOWN_COUNTRY_LETTERS,
        "Expected the three letters of a country (ISO 3166-1) before twelve digits, but found"
            + " letters that no country has; write the three digits of the code instead");
  }

  static Refused testCode() {
    return new Refused(
        RefusalReason.TEST_CODE,
        "Expected a number that an animal can carry, but found code 999, which is for tests only;"
            + " correct the record, or accept test numbers in the settings of a demonstration");
  }

  static Refused implausibleIsoWord() {
    return new Refused(
        RefusalReason.IMPLAUSIBLE_ISO_WORD,
        "Expected the 16 hexadecimal digits of an animal's ISO 11784 word, but found neither in"
            + " either bit order the animal flag set, the reserved bits clear and a valid code;"
            + " write the 15 digits that the scanner shows instead");
  }

  static Refused notANumber(String text) {
    long characters = text.codePoints().count();
    return new Refused(
        RefusalReason.NOT_A_NUMBER,
        "Expected a chip number of 15 digits, 9 digits or 10 characters, but found a text of "
            + characters
            + (characters == 1 ? " character, " : " characters, ")
            + text.codePoints().filter(Character::isDigit).count()
            + " of them digits; write the number alone, as the scanner shows it");
  }

  static Refused tooLong(int length) {
    return new Refused(
        RefusalReason.TOO_LONG,
        "Expected a chip number, but found a text of "
            + length
            + " characters; write the number alone, as the scanner shows it");
  }
}
