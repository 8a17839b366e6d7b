package withers.ingest.inbox;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.NoSuchFileException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import withers.ingest.receipt.FileState;

/**
 * Tells files that are whole from files that are still being written. One that was written to just
 * now is watched until it could have settled: if it has not changed by then, it is whole; if it
 * has, it is left for next time. The wait is the settle time at most, however many files there are.
 *
 * @param time how long a file must have been left alone
 * @param clock tells how long ago a file was written to
 */
public record Settling(Duration time, Clock clock, Waiting waiting) {

  /** The contents without the files that are still being written; for those, a message each. */
  public Contents settle(Contents contents) {
    waitFor(contents.files()).ifPresent(waiting::waitFor);
    Instant watched = clock.instant();
    List<InboxFile> settled = new ArrayList<>();
    List<String> left = new ArrayList<>();
    for (InboxFile file : contents.files()) {
      if (isUnchanged(file)) {
        settled.add(file);
      } else {
        left.add(left(file, watched));
      }
    }
    return contents.with(settled, left);
  }

  /** How long until the youngest file could have settled; empty when all have. */
  private Optional<Duration> waitFor(List<InboxFile> files) {
    Instant now = clock.instant();
    return files.stream()
        .map(file -> time.minus(Duration.between(file.state().modified(), now)))
        .max(Comparator.naturalOrder())
        .filter(rest -> !rest.isNegative() && !rest.isZero())
        // A file dated in the future, by another machine's clock, is watched for the whole time.
        .map(rest -> rest.compareTo(time) > 0 ? time : rest);
  }

  private static boolean isUnchanged(InboxFile file) {
    try {
      return FileState.of(file.path()).equals(file.state());
    } catch (NoSuchFileException gone) {
      return false;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private String left(InboxFile file, Instant watched) {
    return "Expected a file that nobody writes to, but found one that changes (%s, at %s): it is left for next time."
        .formatted(file.shown(), watched.atZone(clock.getZone()).toLocalTime().withNano(0));
  }
}
