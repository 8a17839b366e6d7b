package withers.report.json;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import withers.finding.Band;
import withers.id.OrganisationId;
import withers.report.overview.Overview;
import withers.report.overview.Quality;
import withers.report.overview.RunFigures;
import withers.report.text.Words;

/** An overview as JSON, for scripts. Names stay as they are; new ones may join them. */
public final class OverviewJson {
  private OverviewJson() {}

  private record Root(
      String network,
      String run,
      LocalDate asOf,
      Optional<LocalDate> knownBy,
      long animals,
      long followUps,
      Overview.Changes changes,
      long questions,
      List<Count> counts,
      List<Unjudged> notJudged,
      List<Source> sources,
      List<String> silent,
      List<Run> trend) {}

  private record Count(
      String kind, String band, String organisation, boolean listed, long followUps) {}

  private record Unjudged(String registry, String reason, long animals) {}

  private record Source(
      String source,
      String organisation,
      LocalDate newestExport,
      boolean late,
      long imports,
      Quality quality,
      List<Overview.Withheld> withheld) {}

  private record Run(
      String run,
      LocalDate asOf,
      long animals,
      Map<String, Long> followUps,
      long opened,
      Map<String, Long> closed) {}

  /** The overview as one JSON object, indented. */
  public static String of(Overview overview) {
    return Json.of(root(overview));
  }

  private static Root root(Overview overview) {
    return new Root(
        overview.network(),
        overview.run(),
        overview.asOf(),
        overview.knownBy(),
        overview.animals(),
        overview.followUps(),
        overview.changes(),
        overview.questions(),
        overview.counts().stream().map(OverviewJson::count).toList(),
        overview.notJudged().stream().map(OverviewJson::unjudged).toList(),
        overview.sources().stream().map(OverviewJson::source).toList(),
        overview.silent().stream().map(OrganisationId::value).toList(),
        overview.trend().stream().map(OverviewJson::run).toList());
  }

  private static Count count(Overview.Count count) {
    return new Count(
        count.kind().word(),
        count.band().word(),
        count.organisation().value(),
        count.listed(),
        count.followUps());
  }

  private static Unjudged unjudged(Overview.Unjudged unjudged) {
    return new Unjudged(
        unjudged.registry().value(), Words.of(unjudged.reason()), unjudged.animals());
  }

  private static Source source(Overview.SourceStatus status) {
    return new Source(
        status.source().value(),
        status.organisation().value(),
        status.newestExport(),
        status.isLate(),
        status.imports(),
        status.quality(),
        status.withheld());
  }

  private static Run run(RunFigures run) {
    Map<String, Long> open = new LinkedHashMap<>();
    Stream.of(Band.values()).forEach(band -> open.put(band.word(), run.followUps(band)));
    Map<String, Long> closed = new LinkedHashMap<>();
    run.closed().forEach(one -> closed.put(one.organisation().value(), one.followUps()));
    return new Run(run.run(), run.asOf(), run.animals(), open, run.opened(), closed);
  }
}
