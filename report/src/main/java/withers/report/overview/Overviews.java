package withers.report.overview;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import withers.cases.CaseKey;
import withers.finding.Finding;
import withers.finding.NotJudged;
import withers.finding.RunResult;
import withers.id.SourceId;
import withers.log.ImportMarker;
import withers.report.overview.Overview.Changes;
import withers.report.overview.Overview.Count;
import withers.report.overview.Overview.SourceStatus;
import withers.report.overview.Overview.Unjudged;
import withers.report.overview.Overview.Withheld;
import withers.source.SourceDescription;

/** Makes the overview of a run. Pure. */
public final class Overviews {

  private static final Comparator<Count> BY_KIND =
      Comparator.comparing(Count::kind)
          .thenComparing(Count::band)
          .thenComparing(Count::organisation);

  private static final Comparator<Unjudged> BY_REGISTRY =
      Comparator.comparing(Unjudged::registry).thenComparing(Unjudged::reason);

  private Overviews() {}

  /**
   * The overview of a run.
   *
   * @param markers the committed markers of the log; those of runs are passed over, and those of
   *     exports after the run's days
   */
  public static Overview of(RunResult run, String network, List<ImportMarker> markers) {
    return new Overview(
        network,
        run.id(),
        run.asOf(),
        run.knownBy(),
        run.animals(),
        counts(run.findings(), new HashSet<>(run.aside())),
        new Changes(
            run.opened().size(), run.stillOpen().size(), run.closed().size(), run.settled().size()),
        run.questions().size(),
        unjudged(run.notJudged()),
        sources(markers.stream().filter(marker -> isKnown(marker, run)).toList()));
  }

  private static List<Count> counts(Collection<Finding> findings, Set<CaseKey> aside) {
    return tally(findings, finding -> nothing(finding, !aside.contains(finding.caseKey())))
        .entrySet()
        .stream()
        .map(e -> counted(e.getKey(), e.getValue()))
        .sorted(BY_KIND)
        .toList();
  }

  private static Count nothing(Finding finding, boolean listed) {
    return new Count(finding.kind(), finding.priority().band(), finding.actor(), listed, 0);
  }

  private static Count counted(Count nothing, long followUps) {
    return new Count(
        nothing.kind(), nothing.band(), nothing.organisation(), nothing.listed(), followUps);
  }

  private static List<Unjudged> unjudged(Collection<NotJudged> animals) {
    return tally(new HashSet<>(animals), a -> new Unjudged(a.registry(), a.reason(), 0))
        .entrySet()
        .stream()
        .map(e -> new Unjudged(e.getKey().registry(), e.getKey().reason(), e.getValue()))
        .sorted(BY_REGISTRY)
        .toList();
  }

  private static <T, K> Map<K, Long> tally(Collection<T> things, Function<T, K> key) {
    return things.stream().collect(Collectors.groupingBy(key, Collectors.counting()));
  }

  private static boolean isKnown(ImportMarker marker, RunResult run) {
    return marker.source().isPresent()
        && !marker.exportDate().isAfter(run.asOf())
        && run.knownBy().map(day -> !marker.exportDate().isAfter(day)).orElse(true);
  }

  private static List<SourceStatus> sources(List<ImportMarker> markers) {
    Map<SourceId, List<ImportMarker>> bySource =
        markers.stream()
            .collect(Collectors.groupingBy(ImportMarker::chain, TreeMap::new, Collectors.toList()));
    return bySource.values().stream().map(Overviews::status).toList();
  }

  private static SourceStatus status(List<ImportMarker> markers) {
    ImportMarker last = markers.get(markers.size() - 1);
    SourceDescription source = last.source().orElseThrow();
    return new SourceStatus(
        source.id(),
        source.organisation(),
        markers.stream().map(ImportMarker::exportDate).max(Comparator.naturalOrder()).orElseThrow(),
        markers.size(),
        last.withheld().stream().map(day -> new Withheld(day, disappeared(markers, day))).toList());
  }

  private static long disappeared(List<ImportMarker> markers, LocalDate export) {
    return markers.stream()
        .filter(marker -> marker.exportDate().equals(export))
        .mapToLong(marker -> marker.tally().disappeared())
        .max()
        .orElse(0);
  }
}
