package withers.demo;

import java.util.List;
import java.util.Locale;

/**
 * The chip numbers of the scenario, under code 999, the standard's test code, which no animal
 * carries. After the code: three digits for the registries that may hold the number, two for who
 * bought it, seven that count.
 */
final class Chips {

  /** Registries that may hold a number, by the three digits after the code. */
  static final String COAST = "010";

  static final String NORTHERN = "020";
  static final String EITHER = "015";
  static final String INLAND = "030";

  /** So many numbers have the digits of their purchaser; those after them tell of none. */
  static final int WITH_PURCHASER = 10_000_000;

  private static final int SECOND_CHIPS = 50;

  private Chips() {}

  static String number(String registries, int purchaser, int count) {
    int digits = count < WITH_PURCHASER ? purchaser : nobody(purchaser, count / WITH_PURCHASER);
    return "999%s%02d%07d".formatted(registries, digits, count % WITH_PURCHASER);
  }

  /** Digits of no purchaser, others for second chips: 14 to 30, 71 to 87. */
  private static int nobody(int purchaser, int times) {
    return (purchaser < SECOND_CHIPS ? 13 : 70) + times;
  }

  /** A number from before the standard: nine digits. The coast register may hold it. */
  static String nineDigits(int count) {
    return "1%08d".formatted(count);
  }

  /** A number from before the standard: ten characters. The coast register may hold it. */
  static String tenCharacters(int count) {
    return "7F%08X".formatted(count);
  }

  /** What staff with a bad scanner, a pen or a spreadsheet make of a number. */
  static String damaged(Dice dice, String chip) {
    int at = 3 + dice.below(chip.length() - 4);
    List<String> slips =
        List.of(
            chip.substring(0, at) + chip.substring(at + 1),
            chip.replaceFirst("0", "O"),
            "%.5E"
                .formatted(Double.parseDouble(chip.replaceAll("\\D", "0")))
                .toUpperCase(Locale.ROOT));
    return dice.pick(slips);
  }
}
