package withers.report.schedule;

import java.time.Instant;
import withers.schedule.ScheduledJob;

/** Does what is due of a job. */
@FunctionalInterface
public interface Alarm {

  /**
   * Called when something may be due, never for two jobs at once.
   *
   * @return when to be called again; it may be called earlier
   */
  Instant wake(ScheduledJob job);
}
