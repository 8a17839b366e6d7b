package withers.report.schedule.cli;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.BiConsumer;
import withers.point.Point;
import withers.point.Points;
import withers.report.schedule.Alarm;
import withers.report.schedule.JobState;
import withers.report.schedule.cli.JobBook.Right;
import withers.report.schedule.cli.ScheduleLog.About;
import withers.schedule.ScheduledJob;

/**
 * Does what is due of jobs, and writes down what was done: before a start, and after its end. The
 * caller holds the right to keep the schedule.
 *
 * @param work does a job's actions, for a due time
 * @param ended told of every start that ended
 * @param points told of each point of a start
 */
record JobRunner(
    JobBook book,
    Clock clock,
    Work work,
    ScheduleLog log,
    BiConsumer<ScheduledJob, Outcome> ended,
    Points points)
    implements Alarm {

  /** The workspace is in use, or its disk is full: another attempt comes after this time. */
  static final Duration WAIT = Duration.ofMinutes(1);

  /** Does a job's actions. */
  @FunctionalInterface
  interface Work {
    Outcome perform(ScheduledJob job, About about, Right right);
  }

  @Override
  public Instant wake(ScheduledJob job) {
    try {
      return doWhatIsDue(job);
    } catch (RuntimeException trouble) {
      // What libraries say could hold what they read; the type says enough to look further.
      log.error(
          About.job(job.name()),
          "Expected to keep the schedule, but failed (%s): another attempt comes in a minute"
              .formatted(trouble.getClass().getSimpleName()));
      return clock.instant().plus(WAIT);
    }
  }

  private Instant doWhatIsDue(ScheduledJob job) {
    Instant now = clock.instant();
    Optional<Right> taken = book.take(job, now);
    if (taken.isEmpty()) {
      return now.plus(WAIT);
    }
    try (Right right = taken.get()) {
      return doWhatIsDue(job, right, now);
    } catch (JobBook.RightLostException lost) {
      log.error(
          About.job(job.name()),
          "stopped: another scheduler has taken the job over, because this one was not heard of");
      return clock.instant().plus(WAIT);
    }
  }

  private Instant doWhatIsDue(ScheduledJob job, Right right, Instant now) {
    JobState state = right.state();
    Optional<Instant> due = state.due(job.times(), now);
    if (due.isEmpty()) {
      right.write(state);
      return next(job, state, now);
    }
    return state.isGivenUp(due.get())
        ? giveUp(job, right, due.get())
        : start(job, right, due.get());
  }

  private Instant start(ScheduledJob job, Right right, Instant due) {
    JobState before = right.state();
    About about = About.job(job.name()).start(due);
    JobState begun = before.begun(due, clock.instant());
    right.write(begun);
    points.reached(Point.JOB_BEGUN);
    log.info(about, "begun, due at " + log.time(due, job.times().zone()));
    Outcome outcome = work.perform(job, about, right);
    points.reached(Point.JOB_DONE);
    if (outcome.isStopped() || outcome.isBusy()) {
      right.write(before);
      log.info(
          about,
          outcome.isStopped()
              ? "stopped: it is begun again with the next start of the schedule"
              : "waits: another attempt comes in a minute");
      return clock.instant().plus(WAIT);
    }
    return end(job, right, begun, outcome);
  }

  private Instant giveUp(ScheduledJob job, Right right, Instant due) {
    log.error(
        About.job(job.name()).start(due),
        "Expected it to end, but it was ended from outside %d times: given up for %s. See how much memory and time it had"
            .formatted(JobState.MOST_ATTEMPTS, log.time(due, job.times().zone())));
    return end(job, right, right.state(), Outcome.GIVEN_UP);
  }

  private Instant end(ScheduledJob job, Right right, JobState begun, Outcome outcome) {
    Instant now = clock.instant();
    JobState state = begun.ended(now, outcome.code());
    right.write(state);
    points.reached(Point.JOB_RECORDED);
    About about = About.job(job.name()).start(begun.running().orElseThrow().due());
    log.info(
        about.ended(null, outcome.code()),
        "ended with %d (%s), next on %s"
            .formatted(outcome.code(), outcome.name(), told(state.next(job.times(), now), job)));
    ended.accept(job, outcome);
    return next(job, state, now);
  }

  private String told(Optional<Instant> next, ScheduledJob job) {
    return next.map(time -> log.time(time, job.times().zone())).orElse("no day to come");
  }

  private static Instant next(ScheduledJob job, JobState state, Instant now) {
    return state.next(job.times(), now).orElse(now.plus(Duration.ofDays(1)));
  }
}
