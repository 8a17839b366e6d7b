package withers.ingest;

import java.util.List;

/**
 * Files, sorted into exports.
 *
 * @param sets in the order of their export dates, then of their sources
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
