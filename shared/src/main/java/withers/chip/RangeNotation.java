package withers.chip;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How people write a run of numbers. Three forms, spaces around the dash allowed:
 *
 * <ul>
 *   <li>{@code FIRST-LAST}: two numbers in display form and of one kind, both included;
 *   <li>{@code DIGITS*}: every number of fifteen digits that starts with these digits, from 1 to 14
 *       of them; what lies beyond the largest national code, 274877906943, is no number and left
 *       out;
 *   <li>a single number in display form.
 * </ul>
 */
public final class RangeNotation {
  private static final Pattern RUN = Pattern.compile("([0-9A-Z]+)\\s*-\\s*([0-9A-Z]+)");
  private static final Pattern PREFIX = Pattern.compile("([0-9]{1,14})\\*");
  private static final int DIGITS = 15;
  private static final int CODE_DIGITS = 3;

  private RangeNotation() {}

  /**
   * Reads a range.
   *
   * @throws IllegalArgumentException when the text is none of the three forms, or no number is in
   *     it
   */
  public static NumberRange read(String text) {
    String range = text.strip();
    Matcher prefix = PREFIX.matcher(range);
    if (prefix.matches()) {
      return startingWith(prefix.group(1));
    }
    Matcher run = RUN.matcher(range);
    return run.matches()
        ? new NumberRange(number(run.group(1), text), number(run.group(2), text))
        : new NumberRange(number(range, text), number(range, text));
  }

  private static ChipNumber number(String display, String text) {
    try {
      return ChipNumber.parse(display);
    } catch (IllegalArgumentException noNumber) {
      throw new IllegalArgumentException(
          "Expected a range such as 999000000000000-999000000000999 or 9990*, but found \""
              + text
              + "\"",
          noNumber);
    }
  }

  private static NumberRange startingWith(String prefix) {
    String lowest = prefix + "0".repeat(DIGITS - prefix.length());
    String highest = prefix + "9".repeat(DIGITS - prefix.length());
    int firstCode = Math.max(1, code(lowest));
    long firstNational = code(lowest) == 0 ? 0 : national(lowest);
    if (code(highest) < firstCode || firstNational > ChipNumber.LARGEST_NATIONAL_CODE) {
      throw new IllegalArgumentException(
          "Expected the first digits of a chip number, but found \""
              + prefix
              + "*\", which no number starts with");
    }
    long lastNational = Math.min(national(highest), ChipNumber.LARGEST_NATIONAL_CODE);
    return new NumberRange(
        ChipNumber.iso(firstCode, firstNational), ChipNumber.iso(code(highest), lastNational));
  }

  private static int code(String digits) {
    return Integer.parseInt(digits.substring(0, CODE_DIGITS));
  }

  private static long national(String digits) {
    return Long.parseLong(digits.substring(CODE_DIGITS));
  }
}
