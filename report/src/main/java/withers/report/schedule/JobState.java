package withers.report.schedule;

import java.time.Instant;
import java.util.Optional;
import withers.schedule.DueTimes;
import withers.schedule.ScheduledJob;

/**
 * What was done of a job. A due time is settled when it, or a later one, was done, failed, or given
 * up; of several that are not, the last alone is done: one run catches up with all of them.
 *
 * @param times when the job is due, as text: others begin anew
 * @param settled due times up to this instant need nothing any more
 * @param running a start that has not ended: the program was ended before it
 * @param last the latest start that ended
 * @param succeeded when the latest good one ended
 */
public record JobState(
    String times,
    Instant settled,
    Optional<Start> running,
    Optional<Ended> last,
    Optional<Instant> succeeded) {

  /** So often is a due time begun whose starts never end; it is given up then. */
  public static final int MOST_ATTEMPTS = 3;

  /**
   * A start.
   *
   * @param due the time for which it is
   * @param begun when it began
   * @param attempt the how-manieth for this time, from 1
   */
  public record Start(Instant due, Instant begun, int attempt) {}

  /**
   * A start that ended.
   *
   * @param code as a command's exit code
   */
  public record Ended(Start start, Instant ended, int code) {
    private static final int LAST_GOOD_CODE = 1;

    /** Whether everything was done, though something may need a person. */
    public boolean isGood() {
      return code <= LAST_GOOD_CODE;
    }
  }

  /** Of a job that was never seen before: nothing that was due earlier is made up for. */
  public static JobState beginning(ScheduledJob job, Instant now) {
    return new JobState(
        job.times().toString(), now, Optional.empty(), Optional.empty(), Optional.empty());
  }

  /** Of the job as it is now: when its times were changed, those that passed count for nothing. */
  public JobState of(ScheduledJob job, Instant now) {
    return times.equals(job.times().toString())
        ? this
        : new JobState(job.times().toString(), now, Optional.empty(), last, succeeded);
  }

  /** The due time that is to be done now; empty when nothing is due. */
  public Optional<Instant> due(DueTimes times, Instant now) {
    return times.upTo(now).filter(due -> due.isAfter(settled));
  }

  /** The due time that comes next, one to be done now included; empty when none ever comes. */
  public Optional<Instant> next(DueTimes times, Instant now) {
    return due(times, now).or(() -> times.after(settled.isAfter(now) ? settled : now));
  }

  /** With a start that has begun. */
  public JobState begun(Instant due, Instant now) {
    int attempt = attempts(due) + 1;
    return new JobState(times, settled, Optional.of(new Start(due, now, attempt)), last, succeeded);
  }

  /** Whether starts for this time have been ended from outside so often that it is given up. */
  public boolean isGivenUp(Instant due) {
    return attempts(due) >= MOST_ATTEMPTS;
  }

  private int attempts(Instant due) {
    return running.filter(start -> start.due().equals(due)).map(Start::attempt).orElse(0);
  }

  /** With the running start at its end. */
  public JobState ended(Instant now, int code) {
    Ended ended = new Ended(running.orElseThrow(), now, code);
    return new JobState(
        times,
        ended.start().due(),
        Optional.empty(),
        Optional.of(ended),
        ended.isGood() ? Optional.of(now) : succeeded);
  }
}
