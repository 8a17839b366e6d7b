package withers.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.text.ParseException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Date;
import java.util.List;
import java.util.Random;
import java.util.TimeZone;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.quartz.CronExpression;

/**
 * Another reader of cron expressions: Quartz's. It asks for seconds, for a question mark where a
 * field says nothing, and counts weekdays from Sunday, 1. Of expressions that restrict both days
 * and weekdays it takes none.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CronAndQuartzTest {
  private static final int EXPRESSIONS = 300;
  private static final int TIMES = 20;

  @Test
  void another_reader_finds_the_same_times_where_no_clock_changes() throws ParseException {
    long seed = new Random().nextLong();
    Random dice = new Random(seed);
    for (int i = 0; i < EXPRESSIONS; i++) {
      boolean byDay = dice.nextBoolean();
      List<String> fields =
          List.of(
              field(dice, 0, 59),
              field(dice, 0, 23),
              byDay ? field(dice, 1, 28) : "*",
              field(dice, 1, 12),
              byDay ? "*" : field(dice, 0, 6));
      assertSame(fields, Instant.ofEpochSecond(dice.nextInt(2_000_000_000)), seed);
    }
  }

  private static void assertSame(List<String> fields, Instant from, long seed)
      throws ParseException {
    DueTimes ours = new DueTimes(Cron.read(String.join(" ", fields)), ZoneOffset.UTC);
    CronExpression theirs = new CronExpression(theirs(fields));
    theirs.setTimeZone(TimeZone.getTimeZone("UTC"));
    Instant due = from.truncatedTo(ChronoUnit.SECONDS);
    for (int i = 0; i < TIMES; i++) {
      Instant expected = theirs.getNextValidTimeAfter(Date.from(due)).toInstant();
      assertThat(ours.after(due)).as("%s, seed %d", fields, seed).contains(expected);
      assertThat(ours.upTo(expected)).as("%s, seed %d", fields, seed).contains(expected);
      due = expected;
    }
  }

  private static String theirs(List<String> fields) {
    boolean isAnyDay = fields.get(2).equals("*");
    String weekdays =
        Arrays.stream(fields.get(4).split("(?<=\\D)|(?=\\D)"))
            .map(part -> part.matches("\\d+") ? String.valueOf(Integer.parseInt(part) + 1) : part)
            .collect(Collectors.joining());
    return "0 %s %s %s %s %s"
        .formatted(
            fields.get(0),
            fields.get(1),
            isAnyDay ? "?" : fields.get(2),
            fields.get(3),
            isAnyDay ? weekdays : "?");
  }

  /** Some numbers, a range, or a star. */
  private static String field(Random dice, int least, int most) {
    int one = least + dice.nextInt(most - least + 1);
    int other = least + dice.nextInt(most - least + 1);
    return switch (dice.nextInt(4)) {
      case 0 -> "*";
      case 1 -> String.valueOf(one);
      case 2 -> one + "," + other;
      default -> Math.min(one, other) + "-" + Math.max(one, other);
    };
  }

  /**
   * Why due times are not left to Quartz: where clocks leap over a time, it leaves the night out.
   */
  @Test
  void where_clocks_leap_Quartz_s_own_expressions_leave_a_night_out() throws ParseException {
    String before = "2026-03-28T12:00:00Z";

    assertThat(quartz("0 30 2 * * ?", "Europe/Berlin", before))
        .isEqualTo(Instant.parse("2026-03-30T00:30:00Z"));
    assertThat(
            new DueTimes(Cron.read("30 2 * * *"), ZoneId.of("Europe/Berlin"))
                .after(Instant.parse(before)))
        .contains(Instant.parse("2026-03-29T01:00:00Z"));
  }

  private static Instant quartz(String cron, String zone, String from) throws ParseException {
    CronExpression expression = new CronExpression(cron);
    expression.setTimeZone(TimeZone.getTimeZone(zone));
    return expression.getNextValidTimeAfter(Date.from(Instant.parse(from))).toInstant();
  }
}
