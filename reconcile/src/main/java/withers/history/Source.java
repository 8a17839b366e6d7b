package withers.history;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import withers.id.OrganisationId;
import withers.log.ImportMarker;
import withers.source.Extent;
import withers.source.SourceDescription;
import withers.source.SourceKind;

/**
 * What the exports of one source, as far as they are heard, tell about the source itself.
 *
 * @param description the one that its newest export came with
 * @param first the date of its first export
 * @param newest the day up to which its newest export speaks
 * @param complete the day up to which it told of everything that it holds, by a full export or by
 *     changes after one; empty when it never did
 * @param full the dates of its full exports
 * @param withheld dates whose disappearances are withheld and not confirmed
 */
public record Source(
    SourceDescription description,
    LocalDate first,
    LocalDate newest,
    Optional<LocalDate> complete,
    NavigableSet<LocalDate> full,
    NavigableSet<LocalDate> withheld) {

  public OrganisationId organisation() {
    return description.organisation();
  }

  /** Whether it sends a registry's contacts. */
  public boolean isRegistry() {
    return isRegistry(description);
  }

  static boolean isRegistry(SourceDescription description) {
    return description.kind() == SourceKind.REGISTRY_CONTACTS;
  }

  /**
   * What these markers tell.
   *
   * @param markers the markers of one source, at least one, in the order of their commits
   */
  static Source of(List<ImportMarker> markers) {
    NavigableSet<LocalDate> full = fullDates(markers);
    return new Source(
        latest(markers).source().orElseThrow(),
        markers.stream().map(ImportMarker::exportDate).min(Comparator.naturalOrder()).orElseThrow(),
        markers.stream().map(Source::speaksUpTo).max(Comparator.naturalOrder()).orElseThrow(),
        complete(markers, full),
        full,
        withheld(markers.get(markers.size() - 1)));
  }

  private static ImportMarker latest(List<ImportMarker> markers) {
    return markers.stream()
        .reduce((one, next) -> next.exportDate().isBefore(one.exportDate()) ? one : next)
        .orElseThrow();
  }

  private static NavigableSet<LocalDate> fullDates(List<ImportMarker> markers) {
    NavigableSet<LocalDate> dates = new TreeSet<>();
    markers.stream().filter(Source::isFull).map(ImportMarker::exportDate).forEach(dates::add);
    return dates;
  }

  private static Optional<LocalDate> complete(
      List<ImportMarker> markers, NavigableSet<LocalDate> full) {
    Stream<ImportMarker> telling =
        markers.stream()
            .filter(m -> isFull(m) || m.extent() instanceof Extent.Changes)
            .filter(m -> full.floor(m.exportDate()) != null);
    return telling.map(Source::speaksUpTo).max(Comparator.naturalOrder());
  }

  private static boolean isFull(ImportMarker marker) {
    return marker.extent() instanceof Extent.Full;
  }

  private static LocalDate speaksUpTo(ImportMarker marker) {
    return marker
        .source()
        .flatMap(source -> source.coverage().completeUpTo())
        .filter(marker.exportDate()::isAfter)
        .orElse(marker.exportDate());
  }

  private static NavigableSet<LocalDate> withheld(ImportMarker last) {
    NavigableSet<LocalDate> withheld = new TreeSet<>(last.withheld());
    withheld.removeAll(last.confirmed());
    return withheld;
  }
}
