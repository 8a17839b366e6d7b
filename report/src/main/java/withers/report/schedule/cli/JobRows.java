package withers.report.schedule.cli;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import withers.report.json.JobStateJson;
import withers.report.schedule.JobState;
import withers.report.schedule.postgres.Claims;
import withers.report.schedule.postgres.StoreUnavailableException;
import withers.schedule.ScheduledJob;

/**
 * What was done of each job, in a database that several schedulers share. A right is prolonged
 * while it is held, by a thread of its own; a scheduler that stands still stops prolonging, and
 * finds out when it goes on.
 *
 * @param lease for how long a right lasts that nobody prolongs
 */
record JobRows(Claims claims, Duration lease, Clock clock) implements JobBook {
  private static final int PROLONGED_IN_A_LEASE = 3;

  @Override
  public JobState read(ScheduledJob job, Instant now) {
    return claims
        .state(job.name())
        .map(text -> state(text, job, now))
        .orElse(JobState.beginning(job, now));
  }

  private static JobState state(String text, ScheduledJob job, Instant now) {
    return JobStateJson.read(text)
        .map(state -> state.of(job, now))
        .orElse(JobState.beginning(job, now));
  }

  @Override
  public Optional<JobBook.Right> take(ScheduledJob job, Instant now) {
    String beginning = JobStateJson.write(JobState.beginning(job, now));
    return claims
        .take(job.name(), beginning)
        .map(taken -> new HeldRight(job.name(), taken.fence(), state(taken.state(), job, now)));
  }

  private final class HeldRight implements JobBook.Right {

    /**
     * A check is good for so long: whoever asks at each step does not ask the database each time.
     */
    private static final long FRESH_MILLIS = 500;

    private final String job;
    private final long fence;
    private final JobState state;
    private final ScheduledExecutorService prolonging =
        Executors.newSingleThreadScheduledExecutor();
    private final Future<?> rounds;
    private volatile long confirmed = clock.millis();
    private volatile boolean isLost;

    HeldRight(String job, long fence, JobState state) {
      this.job = job;
      this.fence = fence;
      this.state = state;
      long period = lease.toMillis() / PROLONGED_IN_A_LEASE;
      this.rounds =
          prolonging.scheduleWithFixedDelay(this::prolong, period, period, TimeUnit.MILLISECONDS);
    }

    private void prolong() {
      try {
        long asked = clock.millis();
        isLost = isLost || !claims.prolong(job, fence);
        confirmed = asked;
      } catch (StoreUnavailableException gone) {
        // The lease goes on for a while; whoever asks whether the right is held is told.
      }
    }

    @Override
    public JobState state() {
      return state;
    }

    @Override
    public void write(JobState next) {
      if (!claims.write(job, fence, JobStateJson.write(next))) {
        isLost = true;
        throw new JobBook.RightLostException();
      }
    }

    @Override
    public boolean isHeld() {
      long since = clock.millis() - confirmed;
      if (!isLost && (since < 0 || since >= FRESH_MILLIS)) {
        isLost = !claims.prolong(job, fence);
        confirmed = clock.millis();
      }
      return !isLost;
    }

    @Override
    public void close() {
      rounds.cancel(true);
      prolonging.shutdownNow();
      try {
        claims.leave(job, fence);
      } catch (StoreUnavailableException gone) {
        // It runs out by itself.
      }
    }
  }
}
