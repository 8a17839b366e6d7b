package withers.source;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;

/**
 * What a source can speak for. Absence is not a fact: only a source that covers a number on a date
 * can say, by not listing it, that nothing is there.
 *
 * @param reach the whole registry or clinic, or one account's slice
 * @param ranges the numbers it can speak for; empty means any
 * @param completeUpTo the last day that the records are complete for; empty means the export date
 * @param filled names of the fields that are really filled in
 */
public record Coverage(
    Reach reach, List<NumberRange> ranges, Optional<LocalDate> completeUpTo, Set<String> filled) {

  /** How far a source's records reach. */
  public enum Reach {
    WHOLE,
    ACCOUNT
  }

  public Coverage {
    ranges = List.copyOf(ranges);
    filled = Set.copyOf(filled);
  }

  /** Whether an export of this date would list the number on that day, if it were there. */
  public boolean covers(ChipNumber number, LocalDate day, LocalDate exportDate) {
    return reach == Reach.WHOLE && inRange(number) && !day.isAfter(completeUpTo.orElse(exportDate));
  }

  private boolean inRange(ChipNumber number) {
    return ranges.isEmpty() || ranges.stream().anyMatch(range -> range.contains(number));
  }
}
