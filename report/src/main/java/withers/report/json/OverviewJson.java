package withers.report.json;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.report.overview.Overview;
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
      List<Source> sources) {}

  private record Count(
      String kind, String band, String organisation, boolean listed, long followUps) {}

  private record Unjudged(String registry, String reason, long animals) {}

  private record Source(
      String source,
      String organisation,
      LocalDate newestExport,
      long imports,
      List<Overview.Withheld> withheld) {}

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
        overview.sources().stream().map(OverviewJson::source).toList());
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
        status.imports(),
        status.withheld());
  }
}
