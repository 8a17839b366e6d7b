package withers.ingest.profile;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import withers.chip.NumberRange;
import withers.source.Coverage;

/**
 * What the source covers.
 *
 * @param lagDays how many days before the export its records are complete, from 0
 */
public record CoverageRule(
    Coverage.Reach reach, List<NumberRange> ranges, int lagDays, Set<String> filled) {

  public CoverageRule {
    ranges = List.copyOf(ranges);
    filled = Set.copyOf(filled);
  }

  /** What an export of this date covers. */
  public Coverage at(LocalDate exportDate) {
    Optional<LocalDate> completeUpTo =
        lagDays == 0 ? Optional.empty() : Optional.of(exportDate.minusDays(lagDays));
    return new Coverage(reach, ranges, completeUpTo, filled);
  }
}
