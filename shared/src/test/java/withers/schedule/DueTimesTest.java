package withers.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DueTimesTest {

  // The changes of clocks of these years and places are those of the tz database that the JDK
  // holds.
  @Test
  void a_time_that_clocks_leap_over_is_due_when_they_leap() {
    assertThat(due("30 2 * * *", "Europe/Berlin", "2026-03-28T00:00:00Z", 3))
        .containsExactly("2026-03-28T01:30:00Z", "2026-03-29T01:00:00Z", "2026-03-30T00:30:00Z");
  }

  @Test
  void several_times_that_clocks_leap_over_are_one() {
    assertThat(due("0,15,30,45 2 * * *", "Europe/Berlin", "2026-03-29T00:00:00Z", 2))
        .containsExactly("2026-03-29T01:00:00Z", "2026-03-30T00:00:00Z");
  }

  @Test
  void a_time_that_clocks_show_twice_is_due_the_first_time() {
    assertThat(due("30 1 * * *", "America/New_York", "2026-10-31T12:00:00Z", 2))
        .containsExactly("2026-11-01T05:30:00Z", "2026-11-02T06:30:00Z");
  }

  @Test
  void a_day_that_a_place_left_out_is_due_when_the_next_begins() {
    // Samoa had no 30th of December 2011.
    assertThat(due("0 12 * * *", "Pacific/Apia", "2011-12-29T12:00:00Z", 3))
        .containsExactly("2011-12-29T22:00:00Z", "2011-12-30T10:00:00Z", "2011-12-30T22:00:00Z");
  }

  private static List<String> due(String cron, String zone, String from, int times) {
    DueTimes due = new DueTimes(Cron.read(cron), ZoneId.of(zone));
    return Stream.iterate(due.after(Instant.parse(from)), last -> last.flatMap(due::after))
        .limit(times)
        .map(time -> time.orElseThrow().toString())
        .toList();
  }

  /**
   * A clock on the wall is watched minute by minute for a year: what it shows for the first time,
   * or has leapt over, is due then. Calendars and zones are the JDK's; no code of ours takes part.
   */
  @ParameterizedTest
  @CsvSource({
    "Europe/Lisbon, 2026",
    "America/New_York, 2026",
    "Australia/Lord_Howe, 2026", // half an hour
    "America/Santiago, 2026", // at midnight
    "Africa/Casablanca, 2026", // by the moon
    "Asia/Kathmandu, 1986", // a quarter of an hour, for good
    "Pacific/Apia, 2011", // a whole day
    "UTC, 2026"
  })
  void the_clock_on_the_wall_agrees(ZoneId zone, int year) {
    assertAgreed("30 2 * * *", zone, year, at -> at.getHour() == 2 && at.getMinute() == 30);
    assertAgreed("15 0 * * *", zone, year, at -> at.getHour() == 0 && at.getMinute() == 15);
    assertAgreed("45 1 * * *", zone, year, at -> at.getHour() == 1 && at.getMinute() == 45);
    assertAgreed("0 * * * *", zone, year, at -> at.getMinute() == 0);
    assertAgreed(
        "*/10 1-3 * * *",
        zone,
        year,
        at -> at.getHour() >= 1 && at.getHour() <= 3 && at.getMinute() % 10 == 0);
  }

  private static void assertAgreed(
      String cron, ZoneId zone, int year, Predicate<LocalDateTime> holds) {
    Instant from = Instant.parse(year + "-01-01T00:00:00Z");
    Instant to = Instant.parse(year + 1 + "-01-01T00:00:00Z");
    List<Instant> watched = watched(zone, from, to, holds);
    DueTimes due = new DueTimes(Cron.read(cron), zone);

    assertThat(all(due, from, to)).as(cron).isEqualTo(watched);
    for (int i = 0; i < watched.size(); i++) {
      Instant next = i + 1 < watched.size() ? watched.get(i + 1) : to;
      assertThat(due.upTo(watched.get(i))).contains(watched.get(i));
      assertThat(due.upTo(next.minusNanos(1))).as(cron).contains(watched.get(i));
    }
  }

  private static List<Instant> watched(
      ZoneId zone, Instant from, Instant to, Predicate<LocalDateTime> holds) {
    List<Instant> due = new ArrayList<>();
    LocalDateTime shown = LocalDateTime.ofInstant(from, zone);
    for (Instant now = from.plusSeconds(60); now.isBefore(to); now = now.plusSeconds(60)) {
      LocalDateTime shows = LocalDateTime.ofInstant(now, zone);
      boolean isDue = false;
      while (shown.isBefore(shows)) {
        shown = shown.plus(1, ChronoUnit.MINUTES);
        isDue |= holds.test(shown);
      }
      if (isDue) {
        due.add(now);
      }
    }
    return due;
  }

  private static List<Instant> all(DueTimes due, Instant from, Instant to) {
    return Stream.iterate(due.after(from), Optional::isPresent, last -> last.flatMap(due::after))
        .map(Optional::orElseThrow)
        .takeWhile(time -> time.isBefore(to))
        .toList();
  }
}
