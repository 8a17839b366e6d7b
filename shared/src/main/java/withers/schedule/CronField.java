package withers.schedule;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * One field of a cron expression: the numbers for which it holds.
 *
 * @param bits bit n is set when it holds for n
 * @param isAny whether it is written as a star, without a step
 */
record CronField(long bits, boolean isAny) {

  /** What a field may say. */
  enum Kind {
    MINUTE("a minute", 0, 59, List.of()),
    HOUR("an hour", 0, 23, List.of()),
    DAY("a day of the month", 1, 31, List.of()),
    MONTH(
        "a month",
        1,
        12,
        List.of(
            "", "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov",
            "dec")),
    /** From Sunday, 0; 7 is Sunday, too (common practice, no source). */
    WEEKDAY("a weekday", 0, 7, List.of("sun", "mon", "tue", "wed", "thu", "fri", "sat"));

    private final String words;
    private final int least;
    private final int most;
    private final List<String> names;

    Kind(String words, int least, int most, List<String> names) {
      this.words = words;
      this.least = least;
      this.most = most;
      this.names = names;
    }
  }

  private static final Pattern PART =
      Pattern.compile("(\\*|(?<from>\\w+)(-(?<to>\\w+))?)(/(?<step>\\d{1,2}))?");
  private static final int SUNDAY_AGAIN = 7;

  /**
   * Reads a field: numbers, ranges and stars, each with a step or without, separated by commas;
   * months and weekdays by the first three letters of their English names, too.
   *
   * @throws IllegalArgumentException for anything else
   */
  static CronField read(String text, Kind kind) {
    long bits = 0;
    for (String part : text.split(",", -1)) {
      bits |= part(part, kind);
    }
    boolean isSunday = kind == Kind.WEEKDAY && (bits >> SUNDAY_AGAIN & 1) == 1;
    return new CronField(isSunday ? bits & ~(1L << SUNDAY_AGAIN) | 1 : bits, text.equals("*"));
  }

  private static long part(String text, Kind kind) {
    Matcher part = PART.matcher(text);
    if (!part.matches()) {
      throw refused(text, kind);
    }
    int step = part.group("step") == null ? 1 : Integer.parseInt(part.group("step"));
    int first = kind.least;
    int last = kind == Kind.WEEKDAY ? kind.most - 1 : kind.most;
    if (part.group("from") != null) {
      first = number(part.group("from"), kind);
      last = part.group("to") == null ? first : number(part.group("to"), kind);
    }
    boolean stepsFromOne = part.group("step") != null && first == last;
    if (first > last || step < 1 || stepsFromOne) {
      throw refused(text, kind);
    }
    return IntStream.rangeClosed(first, last)
        .filter(stepping(first, step))
        .mapToLong(n -> 1L << n)
        .reduce(0, (one, other) -> one | other);
  }

  private static java.util.function.IntPredicate stepping(int first, int step) {
    return n -> (n - first) % step == 0;
  }

  private static int number(String text, Kind kind) {
    int named = kind.names.indexOf(text.toLowerCase(Locale.ROOT));
    if (named >= kind.least) {
      return named;
    }
    int number = text.matches("\\d{1,2}") ? Integer.parseInt(text) : -1;
    if (number < kind.least || number > kind.most) {
      throw refused(text, kind);
    }
    return number;
  }

  private static IllegalArgumentException refused(String text, Kind kind) {
    return new IllegalArgumentException(
        "Expected %s from %d to %d, a range such as %d-%d, or a star, but found \"%s\""
            .formatted(kind.words, kind.least, kind.most, kind.least + 1, kind.least + 5, text));
  }

  boolean holds(int number) {
    return (bits >> number & 1) == 1;
  }

  /** All numbers for which it holds, in their order. */
  IntStream numbers() {
    return IntStream.range(0, Long.SIZE).filter(this::holds);
  }
}
