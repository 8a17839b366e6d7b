package withers.report.mail;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import withers.organisation.Directory;
import withers.organisation.Organisation;
import withers.report.chart.Chart;
import withers.report.chart.Drawing;
import withers.report.html.Pages;
import withers.report.list.FollowUpList;
import withers.report.mail.Letter.Page;
import withers.report.overview.Overview;
import withers.report.overview.Trends;
import withers.report.text.Texts;

/**
 * What brings the overview to the coordinator: as text and as a page with its charts; the
 * coordinator's own list, if there is one, comes with it, so that one run is one mail.
 *
 * @param domain of the coordinator's address
 */
record OverviewLetter(
    Overview overview,
    Directory directory,
    Organisation coordinator,
    String domain,
    Drawing drawing,
    Texts texts) {

  /** The overview alone. */
  Letter alone() {
    return letter("", Optional.of(page()), List.of());
  }

  /** With the coordinator's list enclosed. */
  Letter with(ListLetter own) {
    String also = texts.say("mail.overview.enclosed", own.list().size()) + "\n\n";
    return letter(also, Optional.of(page()), List.of(own.page(), own.workbook()));
  }

  /**
   * Without the coordinator's list.
   *
   * @param why the key of the sentence that says why
   */
  Letter without(FollowUpList own, String why) {
    String also =
        "%s. %s\n\n"
            .formatted(texts.say("list.total", own.size()), texts.say(why, coordinator.name()));
    return letter(also, Optional.of(page()), List.of());
  }

  /** As text alone, which is short however many organisations there are. */
  Letter brief() {
    return letter("", Optional.empty(), List.of());
  }

  private Letter letter(String also, Optional<Page> page, List<Enclosure> enclosures) {
    String subject =
        texts.say("mail.overview.subject", overview.network(), texts.date(overview.asOf()));
    String text = also + new PlainOverview(overview, directory, texts).text();
    return new Letter(coordinator, overview.run(), subject, text, page, enclosures);
  }

  private Page page() {
    List<Chart> charts = Trends.of(overview, texts);
    List<Enclosure> pictures =
        charts.stream()
            .flatMap(
                chart ->
                    drawing
                        .png(chart)
                        .map(png -> new Enclosure(id(chart), "image/png", png))
                        .stream())
            .toList();
    Function<Chart, Optional<String>> shown =
        chart ->
            pictures.stream()
                .map(Enclosure::name)
                .filter(id(chart)::equals)
                .map("cid:"::concat)
                .findFirst();
    return new Page(new Pages(texts).mailed(overview, directory, shown), pictures);
  }

  private String id(Chart chart) {
    return "%s.%s@%s".formatted(chart.id(), overview.run(), domain);
  }
}
