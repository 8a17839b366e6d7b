package withers.codec;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Days as objects, one for each day of the chips' time: a log names the same few thousand days
 * millions of times. Safe for several threads: whoever finds none makes an equal one.
 */
final class Days {

  /** From 1970 on; 19 September 2059 is the first that is made anew each time. */
  private static final int KNOWN = 1 << 15;

  private static final @Nullable LocalDate[] BY_NUMBER = new LocalDate[KNOWN];

  private Days() {}

  /**
   * The day so many days after 1 January 1970.
   *
   * @throws java.time.DateTimeException when no calendar goes so far
   */
  static LocalDate of(long number) {
    if (number < 0 || number >= KNOWN) {
      return LocalDate.ofEpochDay(number);
    }
    LocalDate known = BY_NUMBER[(int) number];
    if (known == null) {
      known = LocalDate.ofEpochDay(number);
      BY_NUMBER[(int) number] = known;
    }
    return known;
  }
}
