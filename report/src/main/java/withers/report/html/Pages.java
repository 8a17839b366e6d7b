package withers.report.html;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import withers.organisation.Directory;
import withers.report.chart.Chart;
import withers.report.chart.Drawing;
import withers.report.list.FollowUpList;
import withers.report.overview.Overview;
import withers.report.overview.Trends;
import withers.report.text.Texts;

/**
 * Makes pages from templates that the build has compiled and that escape whatever is put in. A page
 * asks nothing of any server, and runs no script but one of our own, which its policy names by its
 * digest. Safe for several threads.
 */
public final class Pages {

  private static final TemplateEngine ENGINE = TemplateEngine.createPrecompiled(ContentType.Html);

  private static final Script SIFT = Script.named("sift.js");

  private final Texts texts;

  public Pages(Texts texts) {
    this.texts = texts;
  }

  /** The page of one organisation's list: it can be filtered and sorted where scripts run. */
  public String list(FollowUpList list) {
    return list(list, Optional.of(SIFT));
  }

  /** The same for a mail, where none do. */
  public String mailed(FollowUpList list) {
    return list(list, Optional.empty());
  }

  private String list(FollowUpList list, Optional<Script> script) {
    return render("list.jte", Map.of("list", list, "script", script, "texts", texts));
  }

  /** The coordinator's page, with charts in it. */
  public String overview(Overview overview, Directory directory) {
    Drawing drawing = new Drawing(texts.locale());
    return overview(
        overview, directory, chart -> new Figure(chart, drawing.svg(chart), Optional.empty()));
  }

  /**
   * The same for a mail, which shows charts as pictures.
   *
   * @param pictures the address of a chart's picture, if there is one
   */
  public String mailed(
      Overview overview, Directory directory, Function<Chart, Optional<String>> pictures) {
    return overview(
        overview, directory, chart -> new Figure(chart, Optional.empty(), pictures.apply(chart)));
  }

  private String overview(Overview overview, Directory directory, Function<Chart, Figure> figure) {
    return render(
        "overview.jte",
        Map.of(
            "overview",
            overview,
            "figures",
            Trends.of(overview, texts).stream().map(figure).toList(),
            "names",
            new Names(directory),
            "texts",
            texts));
  }

  private static String render(String template, Map<String, Object> parameters) {
    StringOutput page = new StringOutput();
    ENGINE.render(template, parameters, page);
    return page.toString();
  }
}
