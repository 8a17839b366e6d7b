package withers.ingest;

import java.util.List;

/**
 * What became of a number of files.
 *
 * @param reports exports that could be taken, in the order in which they were
 * @param refusals why others could not; nothing of those was changed
 * @param unrecognised names of files that no profile recognises
 */
public record Ingested(
    List<ImportReport> reports, List<String> refusals, List<String> unrecognised) {

  public Ingested {
    reports = List.copyOf(reports);
    refusals = List.copyOf(refusals);
    unrecognised = List.copyOf(unrecognised);
  }

  /** Whether everything was taken, but something needs a person. */
  public boolean needsAttention() {
    return !unrecognised.isEmpty()
        || reports.stream()
            .anyMatch(report -> report.quarantine().isPresent() || report.withheld().isPresent());
  }
}
