package withers.report.overview;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import withers.cases.Anchor;
import withers.finding.Finding;
import withers.finding.RunResult;
import withers.id.SourceId;
import withers.log.ImportMarker;
import withers.log.Tally;
import withers.report.overview.Overview.SourceStatus;
import withers.report.overview.Overview.Withheld;
import withers.source.SourceDescription;

/** What each source has sent, as a run knows it. */
final class SourceStatuses {
  private final RunResult run;
  private final Background background;
  private final Map<Anchor, Long> damaged;

  SourceStatuses(RunResult run, Background background) {
    this.run = run;
    this.background = background;
    this.damaged = damaged(run);
  }

  List<SourceStatus> all() {
    Map<SourceId, List<ImportMarker>> bySource =
        background.markers().stream()
            .filter(this::isKnown)
            .collect(Collectors.groupingBy(ImportMarker::chain, TreeMap::new, Collectors.toList()));
    return bySource.values().stream().map(this::status).toList();
  }

  private boolean isKnown(ImportMarker marker) {
    return marker.source().isPresent()
        && !marker.exportDate().isAfter(run.asOf())
        && run.knownBy().map(day -> !marker.exportDate().isAfter(day)).orElse(true);
  }

  private SourceStatus status(List<ImportMarker> markers) {
    ImportMarker last = markers.get(markers.size() - 1);
    SourceDescription source = last.source().orElseThrow();
    LocalDate newest =
        markers.stream().map(ImportMarker::exportDate).max(Comparator.naturalOrder()).orElseThrow();
    return new SourceStatus(
        source.id(),
        source.organisation(),
        newest,
        newest.isBefore(run.asOf().minusMonths(1)),
        markers.size(),
        quality(source.id(), newest, markers),
        last.withheld().stream().map(day -> new Withheld(day, disappeared(markers, day))).toList());
  }

  /** Rows that were put right and came back are an import of the same day, and a smaller one. */
  private Quality quality(SourceId source, LocalDate newest, List<ImportMarker> markers) {
    Tally largest =
        markers.stream()
            .filter(marker -> marker.exportDate().equals(newest))
            .map(ImportMarker::tally)
            .max(Comparator.comparingLong(Tally::read))
            .orElseThrow();
    return new Quality(
        largest.read(),
        largest.rejected(),
        damaged.getOrDefault(new Anchor.Source(source), 0L),
        background.unnumbered().of(source));
  }

  private static Map<Anchor, Long> damaged(RunResult run) {
    return run.findings().stream()
        .filter(finding -> finding.damage().isPresent())
        .collect(Collectors.groupingBy(Finding::anchor, Collectors.counting()));
  }

  private static long disappeared(List<ImportMarker> markers, LocalDate export) {
    return markers.stream()
        .filter(marker -> marker.exportDate().equals(export))
        .mapToLong(marker -> marker.tally().disappeared())
        .max()
        .orElse(0);
  }
}
