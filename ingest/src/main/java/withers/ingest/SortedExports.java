package withers.ingest;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/**
 * Files, sorted into exports.
 *
 * @param sets in the order of their sources, then of their export dates; rows that were put right
 *     after the exports of their date
 * @param refusals why files can't be taken
 * @param refused files that can't be taken, or not whole, each with the first reason
 * @param unrecognised names of files that no profile recognises
 */
public record SortedExports(
    List<ExportSet> sets,
    List<String> refusals,
    Map<Path, String> refused,
    List<String> unrecognised) {

  public SortedExports {
    sets = List.copyOf(sets);
    refusals = List.copyOf(refusals);
    refused = Map.copyOf(refused);
    unrecognised = List.copyOf(unrecognised);
  }
}
