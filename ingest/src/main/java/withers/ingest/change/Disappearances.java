package withers.ingest.change;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;

/**
 * For each full export of a source but the first: how many records it misses that the full export
 * before it listed. A pure function of the set of exports.
 */
public final class Disappearances {

  /** More missing records than this, and more than this share, are not believed at once. */
  private static final long TOLERATED_RECORDS = 10;

  private static final long TOLERATED_PERCENT = 10;

  /**
   * What one full export misses.
   *
   * @param listed records that the full export before it listed
   * @param missing how many of them it does not list
   */
  public record Gap(LocalDate exportDate, long listed, long missing) {

    static Gap of(int day, long listed, long missing) {
      return new Gap(LocalDate.ofEpochDay(day), listed, missing);
    }

    /** Whether so much is missing that the export itself is in doubt. */
    public boolean isDoubtful() {
      return missing > TOLERATED_RECORDS && missing * 100 > listed * TOLERATED_PERCENT;
    }
  }

  private final List<Gap> gaps;

  private Disappearances(List<Gap> gaps) {
    this.gaps = List.copyOf(gaps);
  }

  static Disappearances of(Listings listings) {
    return new Disappearances(listings.gaps());
  }

  /** What the full export of a date misses; empty for the first and when there is none. */
  public Optional<Gap> at(LocalDate exportDate) {
    return gaps.stream().filter(gap -> gap.exportDate().equals(exportDate)).findFirst();
  }

  /** The dates whose gaps are in doubt and not confirmed. */
  public NavigableSet<LocalDate> withheld(NavigableSet<LocalDate> confirmed) {
    NavigableSet<LocalDate> withheld = new TreeSet<>();
    gaps.stream().filter(Gap::isDoubtful).map(Gap::exportDate).forEach(withheld::add);
    withheld.removeAll(confirmed);
    return Collections.unmodifiableNavigableSet(withheld);
  }
}
