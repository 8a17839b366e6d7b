package withers.report.overview;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Subject;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.log.LogSnapshot;

/**
 * Records that state an animal's own id and no number, as their sources listed them last. Whether
 * another record ties the id to a number plays no part here: the record itself can't be found by
 * one.
 */
public final class Unnumbered {

  /** There are none. */
  public static final Unnumbered NONE = new Unnumbered(Map.of());

  private record Place(SourceId source, RecordKey key) {}

  private record Said(LocalDate export, boolean isListed) {}

  private final Map<SourceId, Long> counts;

  private Unnumbered(Map<SourceId, Long> counts) {
    this.counts = counts;
  }

  /**
   * Reads them.
   *
   * @param until the last day of exports that count
   */
  public static Unnumbered read(LogSnapshot log, LocalDate until) {
    Map<Place, Said> last = new HashMap<>();
    log.<ChipEvent>replay(
        Streams.UNPLACED,
        0,
        marker -> !marker.exportDate().isAfter(until),
        (event, marker) -> {
          if (event.subject() instanceof Subject.Animal) {
            last.merge(place(event), said(event), Unnumbered::newer);
          }
        });
    Set<Place> listed =
        last.entrySet().stream()
            .filter(one -> one.getValue().isListed)
            .map(Map.Entry::getKey)
            .collect(Collectors.toSet());
    return new Unnumbered(
        listed.stream().collect(Collectors.groupingBy(Place::source, Collectors.counting())));
  }

  private static Place place(ChipEvent event) {
    return new Place(event.origin().source(), event.origin().key());
  }

  private static Said said(ChipEvent event) {
    boolean isGone =
        event.fact() instanceof Fact.NoLongerListed || event.fact() instanceof Fact.Withdrawn;
    return new Said(event.origin().exportDate(), !isGone);
  }

  /** What a newer export says counts, and within one that a record is listed. */
  private static Said newer(Said one, Said other) {
    if (one.export.equals(other.export)) {
      return one.isListed ? one : other;
    }
    return one.export.isAfter(other.export) ? one : other;
  }

  /** How many a source has. */
  long of(SourceId source) {
    return counts.getOrDefault(source, 0L);
  }
}
