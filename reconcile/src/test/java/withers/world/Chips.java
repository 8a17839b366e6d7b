package withers.world;

import withers.chip.ChipNumber;
import withers.chip.NumberRange;

/**
 * Chips of the lines: C1 is the number 1 under the test code 999, which no animal carries; O1 is
 * the older number 100000001.
 */
public final class Chips {
  private static final int TEST_CODE = 999;
  private static final int OLDER = 100_000_000;

  private Chips() {}

  public static ChipNumber chip(int number) {
    return ChipNumber.iso(TEST_CODE, number);
  }

  /** C0 or C1000000, ...: a number that ends in six zeros or more. */
  public static ChipNumber cut(int millions) {
    return chip(millions * 1_000_000);
  }

  static ChipNumber chip(String word) {
    long number = Long.parseLong(word.substring(1));
    return word.startsWith("O")
        ? ChipNumber.nineDigit((int) (OLDER + number))
        : ChipNumber.iso(TEST_CODE, number);
  }

  /** The word for a chip. */
  public static String word(ChipNumber chip) {
    return chip.kind() == ChipNumber.Kind.NINE_DIGIT
        ? "O" + (Long.parseLong(chip.display()) - OLDER)
        : "C" + chip.nationalCode();
  }

  static NumberRange range(int first, int last) {
    return new NumberRange(chip(first), chip(last));
  }
}
