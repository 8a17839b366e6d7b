package withers.chip;

/**
 * The numbers of {@code width} digits from {@code least} to {@code most} that a truncated text may
 * have been. A spreadsheet rounds the last digit when it shows a number and cuts when it stores
 * one, so half a unit below and a whole unit above are possible.
 */
record DigitRange(int width, long least, long most) {

  static DigitRange of(String surviving, int lost) {
    long unit = powerOfTen(lost);
    long shown = Long.parseLong(surviving) * unit;
    return new DigitRange(surviving.length() + lost, shown - unit / 2, shown + unit - 1);
  }

  boolean admits(ChipNumber number) {
    String digits = number.display();
    return digits.length() == width
        && Ascii.isDigits(digits)
        && least <= Long.parseLong(digits)
        && Long.parseLong(digits) <= most;
  }

  /** The least national code in the range under this code; beyond 38 bits if there is none. */
  long leastNationalCode(int code) {
    long first = code * ChipNumber.NATIONAL_DECIMALS;
    return first > most ? Long.MAX_VALUE : Math.max(0, least - first);
  }

  int leastCode() {
    return (int) (Math.max(0, least) / ChipNumber.NATIONAL_DECIMALS);
  }

  int mostCode() {
    return (int) (most / ChipNumber.NATIONAL_DECIMALS);
  }

  private static long powerOfTen(int exponent) {
    long power = 1;
    for (int i = 0; i < exponent; i++) {
      power *= 10;
    }
    return power;
  }
}
