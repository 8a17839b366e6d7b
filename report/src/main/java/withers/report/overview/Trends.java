package withers.report.overview;

import java.util.List;
import java.util.function.ToLongFunction;
import java.util.stream.Stream;
import withers.finding.Band;
import withers.report.chart.Chart;
import withers.report.chart.Chart.Row;
import withers.report.text.Texts;

/** How figures went from run to run, as charts. */
public final class Trends {
  private final List<RunFigures> runs;
  private final Texts texts;

  private Trends(List<RunFigures> runs, Texts texts) {
    this.runs = runs;
    this.texts = texts;
  }

  /** The charts of an overview; none before there are two runs to compare. */
  public static List<Chart> of(Overview overview, Texts texts) {
    Trends trends = new Trends(overview.trend(), texts);
    return overview.trend().size() < 2 ? List.of() : List.of(trends.open(), trends.changes());
  }

  private Chart open() {
    return chart(
        "trend-open",
        Stream.of(Band.values())
            .map(band -> row("band." + band.word(), run -> run.followUps(band)))
            .toList());
  }

  private Chart changes() {
    return chart(
        "trend-changes",
        List.of(
            row("overview.opened", RunFigures::opened),
            row("trend.settled", RunFigures::closedByAll)));
  }

  private Row row(String name, ToLongFunction<RunFigures> figure) {
    return new Row(texts.say(name), runs.stream().map(figure::applyAsLong).toList());
  }

  private Chart chart(String id, List<Row> rows) {
    return new Chart(
        id,
        texts.say(id),
        String.join(" ", rows.stream().map(this::told).toList()),
        runs.stream().map(run -> texts.shortDate(run.asOf())).toList(),
        rows);
  }

  private String told(Row row) {
    return texts.say(
        "trend.told", row.name(), row.values().get(0), row.values().get(row.values().size() - 1));
  }
}
