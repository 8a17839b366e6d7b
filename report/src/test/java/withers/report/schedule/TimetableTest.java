package withers.report.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.schedule.Action;
import withers.schedule.Cron;
import withers.schedule.DueTimes;
import withers.schedule.ScheduledJob;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class TimetableTest {
  private static final int WAKES = 6;

  private final List<String> woken = Collections.synchronizedList(new ArrayList<>());
  private final AtomicInteger atWork = new AtomicInteger();
  private final AtomicInteger mostAtWork = new AtomicInteger();
  private final CountDownLatch wakes = new CountDownLatch(WAKES);

  @Test
  void it_wakes_for_each_job_at_once_and_then_as_it_is_told_and_never_for_two_together()
      throws InterruptedException {
    Clock clock = Clock.systemUTC();
    Instant begin = clock.instant();
    try (Timetable timetable =
        Timetable.start(
            List.of(job("first"), job("second")),
            clock,
            job -> wake(job, clock.instant()),
            Timetable.IN_MEMORY)) {
      timetable.until(this::waitForWakes);
    }

    assertThat(woken).hasSizeGreaterThanOrEqualTo(WAKES).contains("first", "second");
    assertThat(woken.get(0)).isEqualTo("first");
    assertThat(mostAtWork).hasValue(1);
    assertThat(clock.instant()).isAfter(begin.plusSeconds(1));
    List<String> before = List.copyOf(woken);
    TimeUnit.MILLISECONDS.sleep(1200);
    assertThat(woken).isEqualTo(before);
  }

  private void waitForWakes() {
    try {
      assertThat(wakes.await(60, TimeUnit.SECONDS)).isTrue();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private Instant wake(ScheduledJob job, Instant now) {
    mostAtWork.accumulateAndGet(atWork.incrementAndGet(), Math::max);
    woken.add(job.name());
    atWork.decrementAndGet();
    wakes.countDown();
    return now.plusMillis(700);
  }

  private static ScheduledJob job(String name) {
    return new ScheduledJob(
        name, new DueTimes(Cron.read("0 0 1 1 *"), ZoneOffset.UTC), Set.of(Action.INGEST));
  }
}
