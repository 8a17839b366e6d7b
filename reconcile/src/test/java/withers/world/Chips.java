package withers.world;

import withers.chip.ChipNumber;
import withers.chip.NumberRange;

/** Chips of the lines: C1 is the number 1 under the test code 999, which no animal carries. */
public final class Chips {
  private static final int TEST_CODE = 999;

  private Chips() {}

  public static ChipNumber chip(int number) {
    return ChipNumber.iso(TEST_CODE, number);
  }

  /** C0 or C1000000, ...: a number that ends in six zeros or more. */
  public static ChipNumber cut(int millions) {
    return chip(millions * 1_000_000);
  }

  static ChipNumber chip(String word) {
    return chip(Integer.parseInt(word.substring(1)));
  }

  static NumberRange range(int first, int last) {
    return new NumberRange(chip(first), chip(last));
  }
}
