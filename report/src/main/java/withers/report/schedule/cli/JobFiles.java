package withers.report.schedule.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import withers.report.json.JobStateJson;
import withers.report.schedule.JobState;
import withers.schedule.ScheduledJob;
import withers.workspace.OwnerOnly;

/**
 * What was done of each job, a file for each. One process keeps the schedule, so the right to a job
 * is its own.
 *
 * @param folder the workspace's own for it
 */
record JobFiles(Path folder) implements JobBook {

  @Override
  public JobState read(ScheduledJob job, Instant now) {
    return known(job).map(state -> state.of(job, now)).orElse(JobState.beginning(job, now));
  }

  private Optional<JobState> known(ScheduledJob job) {
    try {
      return JobStateJson.read(Files.readString(file(job)));
    } catch (NoSuchFileException first) {
      return Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public Optional<Right> take(ScheduledJob job, Instant now) {
    JobState state = read(job, now);
    return Optional.of(
        new Right() {
          @Override
          public JobState state() {
            return state;
          }

          @Override
          public void write(JobState next) {
            JobFiles.this.write(job, next);
          }

          @Override
          public boolean isHeld() {
            return true;
          }

          @Override
          public void close() {
            // It goes with the process.
          }
        });
  }

  /** Writes nothing when the file says so already. */
  private void write(ScheduledJob job, JobState state) {
    if (known(job).filter(state::equals).isPresent()) {
      return;
    }
    try {
      OwnerOnly.folder(folder);
      OwnerOnly.replace(file(job), JobStateJson.write(state).getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Path file(ScheduledJob job) {
    return folder.resolve(job.name() + ".json");
  }
}
