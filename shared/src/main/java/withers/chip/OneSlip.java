package withers.chip;

import java.util.stream.LongStream;

/**
 * Numbers that one slip of the hand takes into each other: one digit written as another, or two
 * neighbouring digits changed over. That these are the slips worth looking for is a judgement of
 * this project. Numbers of different kinds are never one slip apart, and a number is not one slip
 * from itself.
 */
public final class OneSlip {

  private OneSlip() {}

  /** Whether one slip takes either number into the other. */
  public static boolean between(ChipNumber a, ChipNumber b) {
    if (a.kind() != b.kind() || a.equals(b)) {
      return false;
    }
    int radix = a.kind().radix;
    long x = a.value();
    long y = b.value();
    while (x % radix == y % radix) {
      x /= radix;
      y /= radix;
    }
    return x / radix == y / radix || isTransposed(x, y, radix);
  }

  /** Whether the last two digits of both are the same two, changed over. */
  private static boolean isTransposed(long x, long y, int radix) {
    long pair = (long) radix * radix;
    return x / pair == y / pair && x % radix == y / radix % radix && y % radix == x / radix % radix;
  }

  /**
   * The numbers one slip away.
   *
   * @return packed numbers, each once, in ascending order; numbers that do not pack are left out
   */
  public static LongStream neighbours(ChipNumber number) {
    LongStream.Builder values = LongStream.builder();
    int radix = number.kind().radix;
    long place = 1;
    for (int i = 0; i < number.kind().width; i++) {
      addSubstitutions(values, number.value(), place, radix);
      if (i > 0) {
        addTransposition(values, number.value(), place / radix, radix);
      }
      place *= radix;
    }
    return values
        .build()
        .filter(value -> ChipNumber.isValue(number.kind(), value))
        .map(value -> ChipNumber.packValue(number.kind(), value))
        .sorted();
  }

  private static void addSubstitutions(
      LongStream.Builder values, long value, long place, int radix) {
    long without = value - value / place % radix * place;
    for (int digit = 0; digit < radix; digit++) {
      if (without + digit * place != value) {
        values.add(without + digit * place);
      }
    }
  }

  private static void addTransposition(
      LongStream.Builder values, long value, long place, int radix) {
    long right = value / place % radix;
    long left = value / place / radix % radix;
    if (left != right) {
      values.add(value + (left - right) * place + (right - left) * place * radix);
    }
  }
}
