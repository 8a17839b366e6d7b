package withers.yaml;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.regex.Pattern;

/** Single values as configuration files write them. Each refuses others with a whole sentence. */
public final class Values {
  private static final Pattern DATE = Pattern.compile("[0-9]{4}-[0-9]{2}-[0-9]{2}");

  private Values() {}

  /**
   * A whole number in decimal digits, the bounds included.
   *
   * @throws IllegalArgumentException for anything else
   */
  public static int wholeNumber(String text, int least, int most) {
    if (text.matches("-?[0-9]{1,9}")) {
      int number = Integer.parseInt(text);
      if (number >= least && number <= most) {
        return number;
      }
    }
    throw refused("a whole number from %d to %d".formatted(least, most), text);
  }

  /**
   * {@code yes} or {@code true}, {@code no} or {@code false}.
   *
   * @throws IllegalArgumentException for anything else
   */
  public static boolean yesNo(String text) {
    return switch (text) {
      case "yes", "true" -> true;
      case "no", "false" -> false;
      default -> throw refused("yes or no", text);
    };
  }

  /**
   * A date that exists, as {@code YYYY-MM-DD}.
   *
   * @throws IllegalArgumentException for anything else
   */
  public static LocalDate date(String text) {
    if (DATE.matcher(text).matches()) {
      try {
        return LocalDate.parse(text);
      } catch (DateTimeException noSuchDay) {
        throw refused("a date that exists", text);
      }
    }
    throw refused("a date as YYYY-MM-DD", text);
  }

  /**
   * A time zone by its name in the tz database, such as {@code Europe/Lisbon}.
   *
   * @throws IllegalArgumentException for anything else
   */
  public static ZoneId zone(String text) {
    if (ZoneId.getAvailableZoneIds().contains(text)) {
      return ZoneId.of(text);
    }
    throw refused("a time zone such as Europe/Lisbon or America/New_York", text);
  }

  private static IllegalArgumentException refused(String expected, String text) {
    return new IllegalArgumentException(
        "Expected %s, but found %s".formatted(expected, KeyCheck.quoted(text)));
  }
}
