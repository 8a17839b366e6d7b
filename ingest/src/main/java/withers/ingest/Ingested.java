package withers.ingest;

import java.time.Instant;
import java.util.List;
import withers.id.SourceId;
import withers.ingest.answers.AnswersReport;

/**
 * What became of a number of files.
 *
 * @param reports exports that could be taken, in the order in which they were
 * @param refusals why others could not; nothing of those was changed
 * @param unrecognised names of files that no profile recognises
 * @param answers lists' sheets that came back and could be taken, in the order in which they were
 * @param readBefore files that look as they did when they were read, and were not opened again
 * @param passedOver files that are never read: hidden and half-copied ones
 * @param left messages about what was left for next time, or for a person
 */
public record Ingested(
    List<ImportReport> reports,
    List<String> refusals,
    List<String> unrecognised,
    List<AnswersReport> answers,
    List<ReadBefore> readBefore,
    List<String> passedOver,
    List<String> left) {

  /**
   * A file that was not opened again.
   *
   * @param at when it was read
   */
  public record ReadBefore(String file, SourceId source, Instant at) {}

  /** Of files that were all read. */
  public Ingested(List<ImportReport> reports, List<String> refusals, List<String> unrecognised) {
    this(reports, refusals, unrecognised, List.of(), List.of(), List.of(), List.of());
  }

  public Ingested {
    reports = List.copyOf(reports);
    refusals = List.copyOf(refusals);
    unrecognised = List.copyOf(unrecognised);
    answers = List.copyOf(answers);
    readBefore = List.copyOf(readBefore);
    passedOver = List.copyOf(passedOver);
    left = List.copyOf(left);
  }

  /** Whether everything was taken, but something needs a person. */
  public boolean needsAttention() {
    return !unrecognised.isEmpty()
        || !left.isEmpty()
        || answers.stream().anyMatch(one -> one.quarantine().isPresent())
        || reports.stream()
            .anyMatch(report -> report.quarantine().isPresent() || report.withheld().isPresent());
  }
}
