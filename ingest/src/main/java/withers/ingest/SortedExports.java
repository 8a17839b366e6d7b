package withers.ingest;

import java.util.List;

/**
 * Files, sorted into exports.
 *
 * @param sets in the order of their sources, then of their export dates; rows that were put right
 *     after the exports of their date
 * @param refusals why files can't be taken
 * @param unrecognised names of files that no profile recognises
 */
public record SortedExports(
    List<ExportSet> sets, List<String> refusals, List<String> unrecognised) {

  public SortedExports {
    sets = List.copyOf(sets);
    refusals = List.copyOf(refusals);
    unrecognised = List.copyOf(unrecognised);
  }
}
