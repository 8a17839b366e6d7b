package withers.report.schedule;

import java.time.Clock;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import org.quartz.DateBuilder;
import org.quartz.DisallowConcurrentExecution;
import org.quartz.Job;
import org.quartz.JobBuilder;
import org.quartz.JobDetail;
import org.quartz.JobExecutionContext;
import org.quartz.JobExecutionException;
import org.quartz.Scheduler;
import org.quartz.SchedulerException;
import org.quartz.SimpleScheduleBuilder;
import org.quartz.Trigger;
import org.quartz.TriggerBuilder;
import org.quartz.TriggerKey;
import org.quartz.impl.StdSchedulerFactory;
import org.quartz.simpl.RAMJobStore;
import org.quartz.simpl.SimpleThreadPool;
import withers.schedule.ScheduledJob;

/**
 * Wakes up for jobs, on one thread, so that no two are done at once. What is due when, and what was
 * done, is not for it to know: it asks with each wake when the next one is to be. Of jobs that wait
 * together the earlier in the list goes first.
 */
public final class Timetable implements AutoCloseable {

  /** Clocks are set, and machines sleep: after this time at the latest it asks again. */
  private static final Duration LONGEST_SLEEP = Duration.ofMinutes(15);

  /** How Quartz keeps wakes that die with the process. */
  public static final Map<String, String> IN_MEMORY =
      Map.of(StdSchedulerFactory.PROP_JOB_STORE_CLASS, RAMJobStore.class.getName());

  private final Scheduler scheduler;

  private Timetable(Scheduler scheduler) {
    this.scheduler = scheduler;
  }

  /**
   * Starts waking; every job is asked for at once. Close it to stop.
   *
   * @param clock tells how long it is until a job is to be woken for
   * @param store Quartz's properties of where wakes are kept; of schedulers that share a store one
   *     is woken at a time
   */
  public static Timetable start(
      List<ScheduledJob> jobs, Clock clock, Alarm alarm, Map<String, String> store) {
    try {
      Scheduler scheduler = new StdSchedulerFactory(properties(store)).getScheduler();
      Map<String, Wake> wakes = new LinkedHashMap<>();
      jobs.forEach(job -> wakes.put(job.name(), new Wake(job, jobs.indexOf(job), clock, alarm)));
      scheduler.setJobFactory((fired, own) -> wakes.get(fired.getJobDetail().getKey().getName()));
      for (Wake wake : wakes.values()) {
        scheduler.scheduleJob(wake.detail(), Set.of(wake.in(Duration.ZERO)), true);
      }
      scheduler.start();
      return new Timetable(scheduler);
    } catch (SchedulerException e) {
      throw new IllegalStateException("The schedule can't be started", e);
    }
  }

  private static Properties properties(Map<String, String> store) {
    Properties properties = new Properties();
    properties.setProperty(StdSchedulerFactory.PROP_SCHED_INSTANCE_NAME, "withers");
    properties.setProperty(
        StdSchedulerFactory.PROP_THREAD_POOL_CLASS, SimpleThreadPool.class.getName());
    properties.setProperty("org.quartz.threadPool.threadCount", "1");
    store.forEach(properties::setProperty);
    return properties;
  }

  /** Goes on waking while something else is waited for. */
  public void until(Runnable waiting) {
    waiting.run();
  }

  /** Wakes no more; returns when the job that is being done has ended. */
  @Override
  public void close() {
    try {
      scheduler.shutdown(true);
    } catch (SchedulerException e) {
      throw new IllegalStateException("The schedule can't be stopped", e);
    }
  }

  /** Wakes for one job, and sees to the next wake. */
  @DisallowConcurrentExecution
  private record Wake(ScheduledJob job, int place, Clock clock, Alarm alarm) implements Job {
    @Override
    public void execute(JobExecutionContext context) throws JobExecutionException {
      Duration wait = Duration.between(clock.instant(), alarm.wake(job));
      try {
        // Who was woken in place of a scheduler that is gone was woken by another trigger.
        context.getScheduler().rescheduleJob(TriggerKey.triggerKey(job.name()), in(wait));
      } catch (SchedulerException e) {
        throw new JobExecutionException(e);
      }
    }

    JobDetail detail() {
      return JobBuilder.newJob(Wake.class)
          .withIdentity(job.name())
          .storeDurably()
          .requestRecovery()
          .build();
    }

    /**
     * When the thread is not free in time, it fires as soon as it is; again after a while, in case
     * nobody is left to see to the next wake.
     */
    Trigger in(Duration wait) {
      Duration sleep = wait.compareTo(LONGEST_SLEEP) < 0 ? wait : LONGEST_SLEEP;
      int seconds = sleep.isNegative() ? 0 : (int) sleep.plusMillis(999).toSeconds();
      return TriggerBuilder.newTrigger()
          .withIdentity(job.name())
          .forJob(job.name())
          .withPriority(-place)
          .startAt(DateBuilder.futureDate(seconds, DateBuilder.IntervalUnit.SECOND))
          .withSchedule(
              SimpleScheduleBuilder.repeatSecondlyForever((int) LONGEST_SLEEP.toSeconds())
                  .withMisfireHandlingInstructionFireNow())
          .build();
    }
  }
}
