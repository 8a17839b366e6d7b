package withers.ingest.profile;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Optional;

/**
 * Days of a fixed width in digits, such as dd/MM/yyyy, read without a formatter: exports hold
 * millions of them.
 *
 * @param year where the four digits of the year start
 */
record NumericDate(String letters, int year, int month, int day) {

  /** Empty when the pattern is not of this simple form. */
  static Optional<NumericDate> of(String letters) {
    boolean simple =
        letters.replaceAll("[^A-Za-z']", "").matches("(?:[yu]{4}|MM|dd){3}")
            && letters.length() <= 10;
    NumericDate date =
        new NumericDate(
            letters,
            Math.max(letters.indexOf("yyyy"), letters.indexOf("uuuu")),
            letters.indexOf("MM"),
            letters.indexOf("dd"));
    return simple && date.isWhole() ? Optional.of(date) : Optional.empty();
  }

  private boolean isWhole() {
    return year >= 0 && month >= 0 && day >= 0;
  }

  Optional<LocalDate> read(String text) {
    if (text.length() != letters.length() || !hasShape(text)) {
      return Optional.empty();
    }
    int y = number(text, year, 4);
    int m = number(text, month, 2);
    int d = number(text, day, 2);
    return m >= 1 && m <= 12 && d >= 1 && d <= YearMonth.of(y, m).lengthOfMonth()
        ? Optional.of(LocalDate.of(y, m, d))
        : Optional.empty();
  }

  private boolean hasShape(String text) {
    for (int i = 0; i < letters.length(); i++) {
      char expected = letters.charAt(i);
      char found = text.charAt(i);
      boolean fits =
          Character.isLetter(expected) ? found >= '0' && found <= '9' : found == expected;
      if (!fits) {
        return false;
      }
    }
    return true;
  }

  private static int number(String text, int from, int digits) {
    int value = 0;
    for (int i = from; i < from + digits; i++) {
      value = value * 10 + (text.charAt(i) - '0');
    }
    return value;
  }
}
