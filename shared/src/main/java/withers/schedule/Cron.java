package withers.schedule;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import withers.schedule.CronField.Kind;

/**
 * A cron expression of five fields: minute, hour, day of the month, month, weekday, as POSIX has
 * them for {@code crontab} (IEEE Std 1003.1-2017), with steps and English names beside. Where both
 * the day of the month and the weekday are restricted, a day needs one of the two. It speaks of
 * calendars and clocks, and knows of no zone: {@link DueTimes} does.
 */
public final class Cron {
  private static final int FIELDS = 5;

  /** The 29th of February comes back after eight years at the latest, around 2100. */
  private static final int LONGEST_WAIT_DAYS = 8 * 366;

  private static final int DAYS_OF_A_WEEK = 7;

  private final String text;
  private final List<LocalTime> times;
  private final CronField days;
  private final CronField months;
  private final CronField weekdays;

  private Cron(String text, List<CronField> fields) {
    this.text = text;
    this.times =
        fields
            .get(1)
            .numbers()
            .boxed()
            .flatMap(hour -> fields.get(0).numbers().mapToObj(m -> LocalTime.of(hour, m)))
            .toList();
    this.days = fields.get(2);
    this.months = fields.get(3);
    this.weekdays = fields.get(4);
  }

  /**
   * Reads an expression.
   *
   * @throws IllegalArgumentException naming what is wrong, also for one that never comes
   */
  public static Cron read(String text) {
    String[] words = text.strip().split("\\s+");
    if (words.length != FIELDS) {
      throw new IllegalArgumentException(
          "Expected minute, hour, day, month and weekday, such as \"30 2 * * *\", but found %d %s"
              .formatted(words.length, words.length == 1 ? "word" : "words"));
    }
    Kind[] kinds = Kind.values();
    Cron cron =
        new Cron(
            String.join(" ", words),
            Stream.of(kinds).map(k -> CronField.read(words[k.ordinal()], k)).toList());
    // A leap year, with every day that months can have.
    if (cron.after(LocalDateTime.of(2000, 1, 1, 0, 0)).isEmpty()) {
      throw new IllegalArgumentException(
          "Expected a day that comes, but found one that no month has");
    }
    return cron;
  }

  /** The first time after this one; empty when none comes in eight years. */
  Optional<LocalDateTime> after(LocalDateTime time) {
    return first(time, true);
  }

  /** The last time up to this one; empty when there was none in eight years. */
  Optional<LocalDateTime> upTo(LocalDateTime time) {
    return first(time, false);
  }

  private Optional<LocalDateTime> first(LocalDateTime time, boolean ahead) {
    LocalDate day = time.toLocalDate();
    for (int days = 0; days <= LONGEST_WAIT_DAYS; days++) {
      LocalDate candidate = ahead ? day.plusDays(days) : day.minusDays(days);
      Optional<LocalDateTime> found =
          holds(candidate)
              ? ahead
                  ? on(candidate, at -> at.isAfter(time)).findFirst()
                  : on(candidate, at -> !at.isAfter(time)).reduce((one, later) -> later)
              : Optional.empty();
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  private Stream<LocalDateTime> on(LocalDate day, Predicate<LocalDateTime> wanted) {
    return times.stream().map(day::atTime).filter(wanted);
  }

  private boolean holds(LocalDate day) {
    return months.holds(day.getMonthValue()) && isOneOfTheDays(day);
  }

  private boolean isOneOfTheDays(LocalDate day) {
    boolean byDay = days.holds(day.getDayOfMonth());
    boolean byWeekday = weekdays.holds(day.getDayOfWeek().getValue() % DAYS_OF_A_WEEK);
    return days.isAny() || weekdays.isAny() ? byDay && byWeekday : byDay || byWeekday;
  }

  /** The expression, with a space between fields. */
  @Override
  public String toString() {
    return text;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Cron cron && cron.text.equals(text);
  }

  @Override
  public int hashCode() {
    return text.hashCode();
  }
}
