package withers.scorecard;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import withers.history.Sources;
import withers.id.SourceId;
import withers.log.ImportMarker;
import withers.source.Extent;
import withers.source.SourceDescription;

/**
 * A source that a scorecard rests on, and its exports.
 *
 * @param exports by date
 */
public record Heard(SourceDescription source, List<Export> exports) {

  /**
   * What was imported of one date.
   *
   * @param extents how much of its records it held: {@code full}, {@code window}, {@code changes}
   * @param digests SHA-256 of the files, in order
   */
  public record Export(LocalDate date, NavigableSet<String> extents, NavigableSet<String> digests) {
    public Export {
      extents = Collections.unmodifiableNavigableSet(new TreeSet<>(extents));
      digests = Collections.unmodifiableNavigableSet(new TreeSet<>(digests));
    }

    private static Export of(LocalDate date, List<ImportMarker> markers) {
      return new Export(
          date,
          sorted(markers.stream().map(marker -> word(marker.extent())).toList()),
          sorted(
              markers.stream()
                  .flatMap(marker -> marker.files().stream())
                  .map(ImportMarker.FileRead::sha256)
                  .toList()));
    }

    private static NavigableSet<String> sorted(Collection<String> texts) {
      return new TreeSet<>(texts);
    }

    private static String word(Extent extent) {
      if (extent instanceof Extent.Full) {
        return "full";
      }
      return extent instanceof Extent.Window ? "window" : "changes";
    }
  }

  public Heard {
    exports = List.copyOf(exports);
  }

  /** These sources, in the order of their ids, as far as they are heard. */
  static List<Heard> of(Set<SourceId> ids, Collection<ImportMarker> markers, Sources sources) {
    Map<SourceId, List<ImportMarker>> chains =
        markers.stream()
            .filter(sources::hears)
            .filter(marker -> ids.contains(marker.chain()))
            .collect(Collectors.groupingBy(ImportMarker::chain, TreeMap::new, Collectors.toList()));
    return chains.entrySet().stream()
        .map(chain -> new Heard(sources.get(chain.getKey()).description(), of(chain.getValue())))
        .sorted(Comparator.comparing(heard -> heard.source.id()))
        .toList();
  }

  private static List<Export> of(List<ImportMarker> markers) {
    Map<LocalDate, List<ImportMarker>> dates =
        markers.stream()
            .collect(
                Collectors.groupingBy(ImportMarker::exportDate, TreeMap::new, Collectors.toList()));
    return dates.entrySet().stream().map(e -> Export.of(e.getKey(), e.getValue())).toList();
  }
}
