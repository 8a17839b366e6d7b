package withers.ingest.answers;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import withers.log.Tally;

/**
 * What became of a sheet that came back.
 *
 * @param file its name
 * @param tally what became of the rows that were filled in; nothing when it was read before
 * @param unanswered rows in which nothing was filled in
 * @param quarantine where rejected rows are
 * @param before when the very same sheet was read before; then it was not read again
 * @param remarks what a person should know about how it was read, a sentence each
 */
public record AnswersReport(
    String file,
    Tally tally,
    long unanswered,
    Optional<Path> quarantine,
    Optional<Instant> before,
    List<String> remarks) {

  public AnswersReport {
    remarks = List.copyOf(remarks);
  }

  static AnswersReport readBefore(String file, Instant at) {
    return new AnswersReport(file, Tally.NOTHING, 0, Optional.empty(), Optional.of(at), List.of());
  }
}
