package withers.report.schedule.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.point.Points;
import withers.report.schedule.JobState;
import withers.report.schedule.cli.ScheduleLog.About;
import withers.schedule.Action;
import withers.schedule.Cron;
import withers.schedule.DueTimes;
import withers.schedule.ScheduledJob;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class JobRunnerTest {

  /** The program is killed: nothing of ours catches it. */
  private static final class Killed extends Error {
    private static final long serialVersionUID = 1L;
  }

  private static final Outcome BUSY = new Outcome(5, List.of("ingest"), List.of(), false);
  private static final Outcome STOPPED = new Outcome(5, List.of("ingest"), List.of(), true);
  private static final Outcome STORAGE = new Outcome(6, List.of("ingest"), List.of(), false);

  @TempDir private Path folder;

  private final SetClock clock = new SetClock(Instant.parse("2026-01-01T12:00:00Z"));
  private final List<String> said = new ArrayList<>();
  private final List<About> starts = new ArrayList<>();
  private Outcome outcome = Outcome.DONE;
  private boolean wasKilled;
  private Runnable meanwhile = () -> {};

  private JobRunner runner() {
    ScheduleLog log = new ScheduleLog(clock, false, said::add);
    return new JobRunner(
        new JobFiles(folder.resolve("schedule")),
        clock,
        this::perform,
        log,
        (job, ended) -> {},
        Points.NONE);
  }

  private Outcome perform(ScheduledJob job, About about, JobBook.Right right) {
    starts.add(about);
    meanwhile.run();
    return outcome;
  }

  private static ScheduledJob job(String cron, String zone) {
    return new ScheduledJob(
        "nightly", new DueTimes(Cron.read(cron), ZoneId.of(zone)), Set.of(Action.INGEST));
  }

  private static final ScheduledJob NIGHTLY = job("30 2 * * *", "UTC");

  /** Some days on which the program is not up from eight in the evening until noon of the last. */
  private record Outage(LocalDate first, LocalDate last, ZoneId zone) {
    boolean covers(Instant time) {
      LocalDateTime here = LocalDateTime.ofInstant(time, zone);
      return !here.isBefore(first.atTime(20, 0)) && here.isBefore(last.atTime(12, 0));
    }

    /** Whether the night of a day is made up for by that of a later one. */
    boolean swallows(LocalDate day) {
      return day.isAfter(first) && day.isBefore(last);
    }
  }

  /**
   * A year of nights, in which the program is up, down, killed at work, refused, and slow. The
   * outages reach over both changes of the clocks. The calendar alone says what is expected.
   */
  @ParameterizedTest
  @CsvSource({
    "Europe/Lisbon, 30 1 * * *, 01:30, 02:00", // leapt over in March, and shown twice in October
    "America/New_York, 30 2 * * *, 02:30, 03:00" // leapt over in March, while the program is down
  })
  void each_night_of_a_year_is_done_once(
      ZoneId zone, String cron, LocalTime time, LocalTime afterTheLeap) {
    ScheduledJob job = job(cron, zone.getId());
    long seed = new Random().nextLong();
    Random dice = new Random(seed);
    List<Outage> outages =
        List.of(
            new Outage(LocalDate.of(2026, 1, 20), LocalDate.of(2026, 1, 21), zone),
            new Outage(LocalDate.of(2026, 3, 7), LocalDate.of(2026, 3, 8), zone),
            new Outage(LocalDate.of(2026, 3, 29), LocalDate.of(2026, 3, 31), zone),
            new Outage(LocalDate.of(2026, 6, 1), LocalDate.of(2026, 6, 30), zone),
            new Outage(LocalDate.of(2026, 10, 24), LocalDate.of(2026, 10, 25), zone),
            new Outage(LocalDate.of(2026, 11, 2), LocalDate.of(2026, 11, 5), zone));
    List<LocalDate> done = new ArrayList<>();
    Instant end = LocalDate.of(2027, 1, 1).atStartOfDay(zone).toInstant();

    clock.set(LocalDate.of(2026, 1, 1).atStartOfDay(zone).toInstant());
    while (clock.instant().isBefore(end)) {
      meanwhile = () -> trouble(dice);
      outcome = dice.nextInt(10) == 0 ? BUSY : Outcome.DONE;
      int before = starts.size();
      Instant next = wake(job);
      if (starts.size() > before && wasDone(job)) {
        done.add(LocalDate.ofInstant(starts.get(before).start(), zone));
      }
      sleep(next, dice);
      outages.stream().filter(one -> one.covers(clock.instant())).forEach(this::passOver);
    }

    assertThat(done).as("seed %d", seed).isEqualTo(expected(outages));
    assertThat(starts)
        .as("seed %d", seed)
        .allSatisfy(
            start ->
                assertThat(LocalDateTime.ofInstant(start.start(), zone).toLocalTime())
                    .isIn(time, afterTheLeap));
  }

  /** Work takes up to an hour; one in twenty starts is killed, and never two in a row. */
  private void trouble(Random dice) {
    clock.pass(Duration.ofSeconds(dice.nextInt(3600)));
    boolean isKilled = dice.nextInt(20) == 0 && !wasKilled;
    wasKilled = isKilled;
    if (isKilled) {
      throw new Killed();
    }
  }

  /** A killed program is started again by its service manager. */
  private Instant wake(ScheduledJob job) {
    try {
      return runner().wake(job);
    } catch (Killed killed) {
      return clock.instant().plusSeconds(30);
    }
  }

  private boolean wasDone(ScheduledJob job) {
    JobState state = new JobFiles(folder.resolve("schedule")).read(job, clock.instant());
    return state.running().isEmpty() && outcome.equals(Outcome.DONE);
  }

  private void sleep(Instant next, Random dice) {
    Duration sleep = Duration.between(clock.instant(), next);
    Duration longest = Duration.ofHours(2);
    if (!sleep.isNegative()) {
      clock.pass(sleep.compareTo(longest) < 0 ? sleep : longest);
    }
    clock.pass(Duration.ofMillis(dice.nextInt(900)));
  }

  private void passOver(Outage outage) {
    clock.set(outage.last.atTime(12, 0).atZone(outage.zone).toInstant());
  }

  private static List<LocalDate> expected(List<Outage> outages) {
    return LocalDate.of(2026, 1, 1)
        .datesUntil(LocalDate.of(2027, 1, 1))
        .filter(day -> outages.stream().noneMatch(outage -> outage.swallows(day)))
        .toList();
  }

  @Test
  void what_was_due_before_the_job_was_first_seen_is_not_made_up_for() {
    assertThat(runner().wake(NIGHTLY)).isEqualTo("2026-01-02T02:30:00Z");
    assertThat(starts).isEmpty();

    clock.set(Instant.parse("2026-01-02T02:30:00Z"));
    assertThat(runner().wake(NIGHTLY)).isEqualTo("2026-01-03T02:30:00Z");
    assertThat(starts).hasSize(1);
    assertThat(said)
        .containsExactly(
            "2026-01-02 02:30:00 nightly: begun, due at 2026-01-02 02:30:00 (UTC)",
            "2026-01-02 02:30:00 nightly: ended with 0 (DONE), next on 2026-01-03 02:30:00 (UTC)");
  }

  @Test
  void nor_is_what_would_have_been_due_by_times_that_were_stated_since() {
    runner().wake(NIGHTLY);
    clock.pass(Duration.ofHours(10));

    assertThat(runner().wake(job("0 20 * * *", "UTC"))).isEqualTo("2026-01-02T20:00:00Z");
    assertThat(starts).isEmpty();
  }

  @Test
  void in_use_is_waited_for_and_a_failure_is_not_repeated_before_its_next_time() {
    runner().wake(NIGHTLY);
    clock.set(Instant.parse("2026-01-02T02:30:00Z"));
    outcome = BUSY;
    assertThat(runner().wake(NIGHTLY)).isEqualTo("2026-01-02T02:31:00Z");

    clock.pass(Duration.ofMinutes(1));
    outcome = STORAGE;
    assertThat(runner().wake(NIGHTLY)).isEqualTo("2026-01-03T02:30:00Z");
    clock.pass(Duration.ofMinutes(1));
    runner().wake(NIGHTLY);
    assertThat(starts).hasSize(2);
    assertThat(state().last()).map(JobState.Ended::isGood).contains(false);
    assertThat(state().succeeded()).isEmpty();
  }

  @Test
  void what_was_stopped_is_begun_again_and_what_is_killed_three_times_is_given_up() {
    runner().wake(NIGHTLY);
    clock.set(Instant.parse("2026-01-02T02:30:00Z"));
    for (int i = 0; i < 5; i++) {
      outcome = STOPPED;
      runner().wake(NIGHTLY);
    }
    meanwhile =
        () -> {
          throw new Killed();
        };
    for (int i = 0; i < 3; i++) {
      assertThatThrownBy(() -> runner().wake(NIGHTLY)).isInstanceOf(Killed.class);
    }
    assertThat(starts).hasSize(8);

    assertThat(runner().wake(NIGHTLY)).isEqualTo("2026-01-03T02:30:00Z");
    assertThat(starts).hasSize(8);
    assertThat(said).anyMatch(line -> line.contains("was ended from outside 3 times: given up"));
    assertThat(state().last()).map(JobState.Ended::code).contains(70);
  }

  @Test
  void a_clock_that_is_set_back_repeats_nothing() {
    runner().wake(NIGHTLY);
    clock.set(Instant.parse("2026-01-02T02:30:00Z"));
    runner().wake(NIGHTLY);
    clock.set(Instant.parse("2026-01-01T23:00:00Z"));

    assertThat(runner().wake(NIGHTLY)).isEqualTo("2026-01-03T02:30:00Z");
    assertThat(starts).hasSize(1);
  }

  @Test
  void a_book_that_cannot_be_written_starts_nothing_and_is_told() throws IOException {
    Files.writeString(folder.resolve("schedule"), "no folder");

    assertThat(runner().wake(NIGHTLY)).isEqualTo("2026-01-01T12:01:00Z");
    assertThat(starts).isEmpty();
    assertThat(said)
        .containsExactly(
            "2026-01-01 12:00:00 nightly: Expected to keep the schedule, but failed"
                + " (UncheckedIOException): another attempt comes in a minute");
  }

  private JobState state() {
    return new JobFiles(folder.resolve("schedule")).read(NIGHTLY, clock.instant());
  }
}
