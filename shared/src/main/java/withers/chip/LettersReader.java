package withers.chip;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import withers.chip.Reading.Accepted;
import withers.chip.Reading.Guessed;
import withers.chip.Reading.Tentative;

/** Reads texts of digits and capital letters. */
record LettersReader(IsoRules iso, DigitsReader digits) {

  private static final Map<Character, Character> LOOKALIKES =
      Map.of('O', '0', 'I', '1', 'L', '1', 'S', '5', 'B', '8');
  private static final int COUNTRY_LETTERS = 3;

  Reading read(String original, String text) {
    if (text.chars().noneMatch(Ascii::isDigit)) {
      return Refusals.notANumber(original);
    }
    return switch (text.length()) {
      case 15 -> readFifteen(original, text);
      case 10 -> readTen(original, text);
      default -> readLookalikes(original, text).orElseGet(() -> Refusals.notANumber(original));
    };
  }

  private Reading readFifteen(String original, String text) {
    if (!hasCountryLetters(text)) {
      return readLookalikes(original, text).orElseGet(() -> Refusals.notANumber(original));
    }
    OptionalInt code = CountryCodes.numeric(text.substring(0, COUNTRY_LETTERS));
    return code.isPresent()
        ? iso.read(code.getAsInt(), Long.parseLong(text.substring(COUNTRY_LETTERS)))
        : readLookalikes(original, text).orElseGet(Refusals::unknownCountryLetters);
  }

  private static boolean hasCountryLetters(String text) {
    return text.chars().limit(COUNTRY_LETTERS).allMatch(Ascii::isCapital)
        && Ascii.isDigits(text.substring(COUNTRY_LETTERS));
  }

  private static Reading readTen(String original, String text) {
    ChipNumber number = ChipNumber.tenCharacter(text);
    if (Ascii.isHexadecimal(text)) {
      return new Accepted(number, Set.of());
    }
    String beyondHexadecimal = text.replaceAll("[0-9A-F]", "");
    return isLookalikes(beyondHexadecimal)
        ? guessTen(original, number, beyondHexadecimal)
        : new Tentative(
            number, "letters beyond A to F are rare on a chip, and this may be another reference");
  }

  private static Reading guessTen(String original, ChipNumber number, String beyondHexadecimal) {
    String repaired = asDigits(number.display(), Ascii::isHexadecimal);
    return new Guessed(
        original,
        List.of(
            new Candidate(number, Repair.LETTERS_AS_THEY_STAND),
            new Candidate(ChipNumber.tenCharacter(repaired), repair(beyondHexadecimal))));
  }

  /** Empty if reading letters as the digits that they look like leaves letters. */
  private Optional<Reading> readLookalikes(String original, String text) {
    String letters = text.replaceAll("[0-9]", "");
    int length = text.length();
    return isLookalikes(letters) && (length == 9 || length == 15)
        ? Optional.of(
            guess(original, digits.read(original, asDigits(text, Ascii::isDigit)), repair(letters)))
        : Optional.empty();
  }

  private static Reading guess(String original, Reading reading, Repair repair) {
    return Readings.sureNumber(reading)
        .<Reading>map(number -> new Guessed(original, List.of(new Candidate(number, repair))))
        .orElse(reading);
  }

  private static boolean isLookalikes(String letters) {
    return letters.chars().allMatch(c -> LOOKALIKES.containsKey((char) c));
  }

  private static String asDigits(String text, IntPredicate kept) {
    StringBuilder digits = new StringBuilder(text.length());
    text.chars().forEach(c -> digits.append(kept.test(c) ? (char) c : lookalike((char) c)));
    return digits.toString();
  }

  private static char lookalike(char c) {
    return LOOKALIKES.getOrDefault(c, c);
  }

  private static Repair repair(String letters) {
    Set<Repair> repairs =
        letters.chars().mapToObj(LettersReader::repair).collect(Collectors.toSet());
    return repairs.size() == 1 ? repairs.iterator().next() : Repair.SEVERAL_LETTERS_READ_AS_DIGITS;
  }

  private static Repair repair(int letter) {
    return switch (letter) {
      case 'O' -> Repair.LETTER_O_READ_AS_0;
      case 'S' -> Repair.LETTER_S_READ_AS_5;
      case 'B' -> Repair.LETTER_B_READ_AS_8;
      default -> Repair.LETTER_I_OR_L_READ_AS_1;
    };
  }
}
