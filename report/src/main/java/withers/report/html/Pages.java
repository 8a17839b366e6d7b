package withers.report.html;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.organisation.Directory;
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
    List<Figure> figures =
        Trends.of(overview, texts).stream()
            .map(chart -> new Figure(chart, drawing.svg(chart)))
            .toList();
    return render(
        "overview.jte",
        Map.of(
            "overview",
            overview,
            "figures",
            figures,
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
