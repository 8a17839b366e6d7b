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
 * What was done of each job, a file for each, durable when it is written.
 *
 * @param folder the workspace's own for it
 */
record JobBook(Path folder) {

  /** What was done of the job; nothing of one that is seen for the first time. */
  JobState read(ScheduledJob job, Instant now) {
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

  /** The whole file or nothing is written; nothing when it says so already. */
  void write(ScheduledJob job, JobState state) {
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
