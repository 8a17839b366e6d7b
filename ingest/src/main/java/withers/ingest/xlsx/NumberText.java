package withers.ingest.xlsx;

import java.math.BigDecimal;
import java.math.MathContext;
import withers.ingest.rows.Typed;

/**
 * A number as a text that says how much of it is left. A spreadsheet keeps fifteen digits
 * (18.17.4.2 names IEEE 754 doubles); a long number whose last digits are all zero has lost them,
 * and is written as the spreadsheet shows it: 9.85112E+14.
 */
record NumberText(String text, Typed typed) {

  private static final int KEPT = 15;
  private static final int LONG = 13;
  private static final int LOST = 6;

  /** Where a sum of doubles that should be whole may miss it. */
  private static final int SHORT = 9;

  private static final int LARGEST_EXPONENT = 308;

  static NumberText of(BigDecimal exact) {
    BigDecimal kept = exact.round(new MathContext(KEPT)).stripTrailingZeros();
    long digits = (long) kept.precision() - kept.scale();
    if (Math.abs(digits) > LARGEST_EXPONENT) {
      return new NumberText(scientific(kept, digits), Typed.FRACTION);
    }
    if (isWhole(exact, kept, digits)) {
      boolean lost = digits > KEPT || digits >= LONG && -kept.scale() >= LOST;
      return new NumberText(lost ? scientific(kept, digits) : kept.toPlainString(), Typed.TEXT);
    }
    return new NumberText(kept.toPlainString(), Typed.FRACTION);
  }

  private static boolean isWhole(BigDecimal exact, BigDecimal kept, long digits) {
    return kept.scale() <= 0 && (digits <= SHORT || exact.stripTrailingZeros().scale() <= 0);
  }

  private static String scientific(BigDecimal number, long digits) {
    String significant = number.unscaledValue().abs().toString();
    String rest = significant.length() > 1 ? "." + significant.substring(1) : "";
    long exponent = digits - 1;
    return (number.signum() < 0 ? "-" : "")
        + significant.charAt(0)
        + rest
        + (exponent < 0 ? "E-" : "E+")
        + Math.abs(exponent);
  }
}
