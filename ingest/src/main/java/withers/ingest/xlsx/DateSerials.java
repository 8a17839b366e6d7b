package withers.ingest.xlsx;

import java.time.LocalDate;
import java.util.Optional;
import withers.ingest.rows.Typed;

/**
 * Reads the numbers that spreadsheets write for days (ISO/IEC 29500-1, 18.17.4.1). In the 1900
 * system, 1 is 1 January 1900 and 60 is 29 February 1900, a day that never was, so that every later
 * number is one too high; in the 1904 system, 0 is 1 January 1904.
 */
enum DateSerials {
  FROM_1900 {
    @Override
    Typed day(long serial) {
      if (serial == NEVER) {
        return Typed.unreadable("29 February 1900, a day that never was");
      }
      LocalDate zero = LocalDate.of(1899, 12, serial < NEVER ? 31 : 30);
      return serial == 0 ? Typed.TEXT : counted(zero, serial);
    }
  },
  FROM_1904 {
    @Override
    Typed day(long serial) {
      return counted(LocalDate.of(1904, 1, 1), serial);
    }
  };

  private static final long NEVER = 60;
  private static final LocalDate LAST = LocalDate.of(9999, 12, 31);

  /**
   * Reads a whole number. Zero of the 1900 system is what an empty date looks like, and no day.
   *
   * @return a day, a text, or something unreadable
   */
  abstract Typed day(long serial);

  private static Typed counted(LocalDate zero, long serial) {
    Optional<LocalDate> day =
        serial >= 0 && serial <= LAST.toEpochDay() - zero.toEpochDay()
            ? Optional.of(zero.plusDays(serial))
            : Optional.empty();
    return day.map(Typed::day).orElseGet(() -> Typed.unreadable("a number that is no day"));
  }
}
