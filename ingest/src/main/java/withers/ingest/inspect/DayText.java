package withers.ingest.inspect;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A text that looks like a day, as far as its form goes.
 *
 * @param form what all days of one column share: separators, the year's place and width, the time
 * @param first the number in first place among day and month; where the form itself tells which is
 *     which, the day
 * @param second the other of the two; else the month
 * @param isPadded whether both have two digits
 */
record DayText(Form form, int first, int second, int year, boolean isPadded) {

  /** Which of day and month comes first. */
  enum Order {
    DAY_FIRST,
    MONTH_FIRST
  }

  /**
   * The form of a day.
   *
   * @param pattern pattern letters with {@code A} and {@code B} for day and month where only
   *     evidence tells which is which, else with {@code d} and {@code M}
   */
  record Form(String pattern) {

    /** Whether day and month can be told apart only by their numbers. */
    boolean isOpen() {
      return pattern.contains("A");
    }

    boolean hasShortYear() {
      return !pattern.contains("yyyy");
    }

    /** The pattern in the letters that profiles use. */
    String letters(Order order, boolean isPadded) {
      String day = isPadded ? "dd" : "d";
      String month = isPadded ? "MM" : "M";
      boolean dayFirst = order == Order.DAY_FIRST;
      return pattern
          .replace("A", dayFirst ? day : month)
          .replace("B", dayFirst ? month : day)
          .replace("D", day)
          .replace("N", month);
    }
  }

  private static final String TIME =
      "(?<time>(?:[ T][0-9]{1,2}:[0-9]{2}(?::[0-9]{2}(?:\\.[0-9]{1,3})?)?)?)";
  private static final Pattern YEAR_LAST =
      Pattern.compile("([0-9]{1,2})([-./ ])([0-9]{1,2})\\2([0-9]{4}|[0-9]{2})" + TIME);
  private static final Pattern YEAR_FIRST =
      Pattern.compile("([0-9]{4})([-./ ])([0-9]{1,2})\\2([0-9]{1,2})" + TIME);
  private static final Pattern PLAIN = Pattern.compile("((?:19|20)[0-9]{2})([0-9]{2})([0-9]{2})");
  private static final Pattern NAMED =
      Pattern.compile("([0-9]{1,2})([- ./])(\\p{L}{3,9})\\2([0-9]{4})" + TIME);
  private static final Pattern NAMED_FIRST =
      Pattern.compile("(\\p{L}{3,9}) ([0-9]{1,2}), ([0-9]{4})" + TIME);
  private static final String MONTHS = "janfebmaraprmayjunjulaugsepoctnovdec";
  private static final int EARLIEST = 1900;
  private static final int LATEST = 2099;

  /** Reads the form of a text; empty when it is no day in any order. */
  static Optional<DayText> of(String text) {
    return yearFirst(text)
        .or(() -> yearLast(text))
        .or(() -> plain(text))
        .or(() -> named(text))
        .or(() -> namedFirst(text))
        .filter(DayText::isPlausible);
  }

  private boolean isPlausible() {
    return day(Order.DAY_FIRST).isPresent() || form.isOpen() && day(Order.MONTH_FIRST).isPresent();
  }

  /** The day, read in this order; a form that tells the order itself is read as it says. */
  Optional<LocalDate> day(Order order) {
    boolean swapped = form.isOpen() && order == Order.MONTH_FIRST;
    int day = swapped ? second : first;
    int month = swapped ? first : second;
    boolean exists =
        year >= EARLIEST
            && year <= LATEST
            && month >= 1
            && month <= 12
            && day >= 1
            && day <= YearMonth.of(year, month).lengthOfMonth();
    return exists ? Optional.of(LocalDate.of(year, month, day)) : Optional.empty();
  }

  private static Optional<DayText> yearLast(String text) {
    Matcher m = YEAR_LAST.matcher(text);
    if (!m.matches()) {
      return Optional.empty();
    }
    String s = m.group(2);
    boolean isShort = m.group(4).length() == 2;
    Form form = new Form("A" + s + "B" + s + (isShort ? "yy" : "yyyy") + time(m));
    int year = number(m.group(4)) + (isShort ? 2000 : 0);
    return Optional.of(
        new DayText(form, number(m.group(1)), number(m.group(3)), year, padded(m, 1, 3)));
  }

  private static Optional<DayText> yearFirst(String text) {
    Matcher m = YEAR_FIRST.matcher(text);
    if (!m.matches()) {
      return Optional.empty();
    }
    Form form = new Form("yyyy" + m.group(2) + "N" + m.group(2) + "D" + time(m));
    return Optional.of(
        new DayText(
            form, number(m.group(4)), number(m.group(3)), number(m.group(1)), padded(m, 3, 4)));
  }

  private static Optional<DayText> plain(String text) {
    Matcher m = PLAIN.matcher(text);
    return m.matches()
        ? Optional.of(
            new DayText(
                new Form("yyyyND"),
                number(m.group(3)),
                number(m.group(2)),
                number(m.group(1)),
                true))
        : Optional.empty();
  }

  private static Optional<DayText> named(String text) {
    Matcher m = NAMED.matcher(text);
    if (!m.matches()) {
      return Optional.empty();
    }
    String month = m.group(3).length() == 3 ? "MMM" : "MMMM";
    Form form = new Form("D" + m.group(2) + month + m.group(2) + "yyyy" + time(m));
    return month(m.group(3))
        .map(n -> new DayText(form, number(m.group(1)), n, number(m.group(4)), padded(m, 1, 1)));
  }

  private static Optional<DayText> namedFirst(String text) {
    Matcher m = NAMED_FIRST.matcher(text);
    if (!m.matches()) {
      return Optional.empty();
    }
    Form form = new Form((m.group(1).length() == 3 ? "MMM" : "MMMM") + " D, yyyy" + time(m));
    return month(m.group(1))
        .map(n -> new DayText(form, number(m.group(2)), n, number(m.group(3)), padded(m, 2, 2)));
  }

  private static Optional<Integer> month(String name) {
    int at = MONTHS.indexOf(name.substring(0, 3).toLowerCase(Locale.ROOT));
    return at >= 0 && at % 3 == 0 ? Optional.of(at / 3 + 1) : Optional.empty();
  }

  private static boolean padded(Matcher m, int one, int two) {
    return m.group(one).length() == 2 && m.group(two).length() == 2;
  }

  private static String time(Matcher m) {
    String time = m.group("time");
    if (time.isEmpty()) {
      return "";
    }
    String hours = time.indexOf(':') == 2 ? "H" : "HH";
    String head = time.charAt(0) == 'T' ? "'T'" : " ";
    int colons = time.length() - time.replace(":", "").length();
    int dot = time.indexOf('.');
    String fraction = dot < 0 ? "" : "." + "S".repeat(time.length() - dot - 1);
    return head + hours + ":mm" + (colons == 2 ? ":ss" : "") + fraction;
  }

  private static int number(String digits) {
    return Integer.parseInt(digits);
  }
}
