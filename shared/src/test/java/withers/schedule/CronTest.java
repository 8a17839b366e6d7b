package withers.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CronTest {

  // The first and the last two are the examples of POSIX for crontab (IEEE Std 1003.1-2017,
  // "crontab", EXAMPLES and EXTENDED DESCRIPTION), recalled from memory.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          0 0 1,15 * 1      | 2026-03-01T00:00, 2026-03-02T00:00, 2026-03-09T00:00, 2026-03-15T00:00
          30 2 * * *        | 2026-02-28T02:30, 2026-03-01T02:30, 2026-03-02T02:30
          */20 6 * * *      | 2026-02-28T06:00, 2026-02-28T06:20, 2026-02-28T06:40, 2026-03-01T06:00
          0 6-10/2 * * *    | 2026-02-28T06:00, 2026-02-28T08:00, 2026-02-28T10:00, 2026-03-01T06:00
          0 6 * * mon-fri   | 2026-03-02T06:00, 2026-03-03T06:00, 2026-03-04T06:00, 2026-03-05T06:00
          0 6 1 jan,Jul *   | 2026-07-01T06:00, 2027-01-01T06:00, 2027-07-01T06:00
          0 0 29 2 *        | 2028-02-29T00:00, 2032-02-29T00:00
          0 0 * * 0         | 2026-03-01T00:00, 2026-03-08T00:00
          0 0 * * 7         | 2026-03-01T00:00, 2026-03-08T00:00
          0 0 * * 5-7       | 2026-03-01T00:00, 2026-03-06T00:00, 2026-03-07T00:00
          """)
  void comes_when_its_fields_say(String text, String times) {
    List<LocalDateTime> expected = Stream.of(times.split(", ")).map(LocalDateTime::parse).toList();

    assertThat(
            Stream.iterate(
                    Cron.read(text).after(LocalDateTime.of(2026, 2, 28, 0, 0)),
                    last -> last.flatMap(Cron.read(text)::after))
                .limit(expected.size())
                .map(Optional::orElseThrow))
        .isEqualTo(expected);
  }

  @Test
  void looks_back_too_and_the_time_itself_counts_as_past() {
    Cron cron = Cron.read("30 2 * * *");

    assertThat(cron.upTo(LocalDateTime.parse("2026-03-01T02:30")))
        .contains(LocalDateTime.parse("2026-03-01T02:30"));
    assertThat(cron.upTo(LocalDateTime.parse("2026-03-01T02:29:59")))
        .contains(LocalDateTime.parse("2026-02-28T02:30"));
    assertThat(cron.after(LocalDateTime.parse("2026-03-01T02:30")))
        .contains(LocalDateTime.parse("2026-03-02T02:30"));
  }

  @Test
  void a_leap_day_is_waited_for_over_a_century_without_one() {
    assertThat(Cron.read("0 0 29 feb *").after(LocalDateTime.parse("2096-03-01T00:00")))
        .contains(LocalDateTime.parse("2104-02-29T00:00"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          30 2 * *        | Expected minute, hour, day, month and weekday, such as "30 2 * * *", but found 4 words
          nightly         | Expected minute, hour, day, month and weekday, such as "30 2 * * *", but found 1 word
          0 30 2 * * ?    | Expected minute, hour, day, month and weekday, such as "30 2 * * *", but found 6 words
          60 2 * * *      | Expected a minute from 0 to 59, a range such as 1-5, or a star, but found "60"
          0 24 * * *      | Expected an hour from 0 to 23, a range such as 1-5, or a star, but found "24"
          0 0 0 * *       | Expected a day of the month from 1 to 31, a range such as 2-6, or a star, but found "0"
          0 0 5-2 * *     | Expected a day of the month from 1 to 31, a range such as 2-6, or a star, but found "5-2"
          0 0 * 13 *      | Expected a month from 1 to 12, a range such as 2-6, or a star, but found "13"
          0 0 * * mo      | Expected a weekday from 0 to 7, a range such as 1-5, or a star, but found "mo"
          0 0 * * 1,      | Expected a weekday from 0 to 7, a range such as 1-5, or a star, but found ""
          5/15 0 * * *    | Expected a minute from 0 to 59, a range such as 1-5, or a star, but found "5/15"
          */0 0 * * *     | Expected a minute from 0 to 59, a range such as 1-5, or a star, but found "*/0"
          0 0 30 2 *      | Expected a day that comes, but found one that no month has
          0 0 31 4,6,9 *  | Expected a day that comes, but found one that no month has
          """)
  void refuses_others_and_says_why(String text, String message) {
    assertThatThrownBy(() -> Cron.read(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(message);
  }
}
