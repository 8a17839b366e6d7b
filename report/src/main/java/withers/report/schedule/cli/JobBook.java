package withers.report.schedule.cli;

import java.time.Instant;
import java.util.Optional;
import withers.report.schedule.JobState;
import withers.schedule.ScheduledJob;

/** What was done of each job, durable when it is written. */
interface JobBook {

  /** What was done of the job; nothing of one that is seen for the first time. */
  JobState read(ScheduledJob job, Instant now);

  /** Takes the right to do a job, and to write of it; empty when another scheduler has it. */
  Optional<Right> take(ScheduledJob job, Instant now);

  /** The right to do a job. Safe for several threads. */
  interface Right extends AutoCloseable {

    /** What was done of the job, as of the taking. */
    JobState state();

    /**
     * Writes what was done, whole or not at all.
     *
     * @throws RightLostException when another scheduler has the right by now; nothing was written
     */
    void write(JobState state);

    /** Whether it is still held; when not, whatever is left to do is the other's. */
    boolean isHeld();

    @Override
    void close();
  }

  /** The right went to another scheduler. */
  final class RightLostException extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }
}
