package withers.report.mail;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import withers.finding.Band;
import withers.id.OrganisationId;
import withers.organisation.Directory;
import withers.organisation.Organisation;
import withers.report.overview.Overview;
import withers.report.overview.Overview.SourceStatus;
import withers.report.text.Texts;

/** The overview's main figures as text, for readers of mail that show no page. */
record PlainOverview(Overview overview, Directory directory, Texts texts) {

  /** The text, its lines ended by line feeds. */
  String text() {
    List<String> lines = new ArrayList<>();
    lines.add(overview.network());
    lines.add(texts.say("overview.title"));
    lines.add(texts.say("list.as-of", texts.date(overview.asOf())));
    lines.add("");
    lines.add(texts.say("overview.animals", overview.animals(), overview.followUps()));
    for (Band band : Band.values()) {
      lines.add(figure(texts.say("band." + band.word()), overview.followUps(band)));
    }
    changes(lines);
    organisations(lines);
    missing(lines);
    lines.add("");
    lines.add("-- ");
    lines.add(texts.say("list.footer", overview.run()));
    return String.join("\n", lines) + "\n";
  }

  private void changes(List<String> lines) {
    heading("overview.changes", lines);
    Overview.Changes changes = overview.changes();
    lines.add(figure(texts.say("overview.opened"), changes.opened()));
    lines.add(figure(texts.say("overview.still-open"), changes.stillOpen()));
    lines.add(figure(texts.say("overview.closed"), changes.closed()));
  }

  private void organisations(List<String> lines) {
    heading("overview.organisations", lines);
    List<OrganisationId> organisations = overview.organisations();
    if (organisations.isEmpty()) {
      lines.add(texts.say("overview.organisation.none"));
    }
    organisations.forEach(id -> lines.add(figure(name(id), overview.followUps(id))));
  }

  private void missing(List<String> lines) {
    heading("overview.missing", lines);
    List<String> names =
        Stream.concat(
                overview.late().stream().map(SourceStatus::organisation),
                overview.silent().stream())
            .distinct()
            .map(this::name)
            .toList();
    lines.addAll(names.isEmpty() ? List.of(texts.say("overview.missing.none")) : names);
  }

  private void heading(String key, List<String> lines) {
    lines.add("");
    lines.add(texts.say(key));
  }

  private String figure(String name, long number) {
    return "%s: %s".formatted(name, texts.count(number));
  }

  private String name(OrganisationId id) {
    return directory.find(id).map(Organisation::name).orElse(id.value());
  }
}
