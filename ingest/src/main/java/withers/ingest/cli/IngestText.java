package withers.ingest.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import withers.cli.Console;
import withers.id.SourceId;
import withers.ingest.ExportSet;
import withers.ingest.ImportReport;
import withers.ingest.Ingested;
import withers.ingest.answers.AnswersReport;
import withers.ingest.change.Disappearances;
import withers.log.Tally;
import withers.workspace.WorkspacePaths;

/** Tells people what became of exports: results to standard output, the rest as messages. */
public final class IngestText {

  private static final int FIRST = 3;
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  private final WorkspacePaths paths;
  private final ZoneId zone;

  /**
   * Texts about exports of a workspace.
   *
   * @param zone in which times are told
   */
  public IngestText(WorkspacePaths paths, ZoneId zone) {
    this.paths = paths;
    this.zone = zone;
  }

  /** Tells everything. */
  public void tell(Ingested ingested, Console console) {
    if (isNothing(ingested)) {
      console.print("Nothing to import.");
    }
    for (ImportReport report : ingested.reports()) {
      console.print(line(report));
      remarks(report).forEach(console::say);
    }
    for (AnswersReport report : ingested.answers()) {
      console.print(line(report));
      remarks(report).forEach(console::say);
    }
    readBefore(ingested).forEach(console::print);
    ingested.refusals().forEach(refusal -> console.say("withers: " + refusal));
    ingested.unrecognised().stream()
        .map(IngestText::unrecognised)
        .forEach(message -> console.say("withers: " + message));
    ingested.left().forEach(message -> console.say("withers: " + message));
    if (!ingested.passedOver().isEmpty()) {
      console.say(passedOver(ingested.passedOver()));
    }
  }

  private static boolean isNothing(Ingested ingested) {
    return ingested.reports().isEmpty()
        && ingested.answers().isEmpty()
        && ingested.refusals().isEmpty()
        && ingested.readBefore().isEmpty();
  }

  private static String passedOver(List<String> files) {
    String first = String.join(", ", files.subList(0, Math.min(files.size(), FIRST)));
    return String.format(
        Locale.ROOT,
        "withers: Passed over %,d in the inbox, hidden or half copied: %s%s",
        files.size(),
        first,
        files.size() > FIRST ? ", ..." : "");
  }

  /** A line for each source: files stay in the inbox, and would fill the screen in time. */
  private List<String> readBefore(Ingested ingested) {
    Map<SourceId, List<Instant>> times =
        ingested.readBefore().stream()
            .collect(
                Collectors.groupingBy(
                    Ingested.ReadBefore::source,
                    TreeMap::new,
                    Collectors.mapping(Ingested.ReadBefore::at, Collectors.toList())));
    return times.entrySet().stream().map(e -> readBefore(e.getKey(), e.getValue())).toList();
  }

  private String readBefore(SourceId source, List<Instant> times) {
    return String.format(
        Locale.ROOT,
        "%s: %,d %s unchanged since read, last on %s; not read again",
        source,
        times.size(),
        times.size() == 1 ? "file" : "files",
        time(Collections.max(times)));
  }

  private String time(Instant time) {
    return TIME.format(time.atZone(zone)) + " (" + zone.getId() + ")";
  }

  private String before(ImportReport report) {
    return report.before().map(at -> ", on " + time(at)).orElse("");
  }

  private String line(ImportReport report) {
    return export(report.set())
        + switch (report.result()) {
          case IMPORTED -> counted(report.tally());
          case NOTHING_NEW -> counted(report.tally()) + "; nothing new";
          case IMPORTED_BEFORE -> "imported before" + before(report) + "; nothing new";
        };
  }

  private static String line(AnswersReport report) {
    return String.format(
        Locale.ROOT,
        "answers in %s: %s; %,d %s without an answer%s",
        report.file(),
        counted(report.tally()),
        report.unanswered(),
        report.unanswered() == 1 ? "row" : "rows",
        report.tally().events() == 0 ? "; nothing new" : "");
  }

  private List<String> remarks(AnswersReport report) {
    List<String> remarks = new ArrayList<>();
    report.remarks().forEach(remark -> remarks.add("  " + remark));
    report.quarantine().map(file -> rejected(report.tally(), file)).ifPresent(remarks::add);
    return remarks;
  }

  private String rejected(Tally tally, Path file) {
    return String.format(
        Locale.ROOT,
        "  Rejected %s with reasons: %s. Put the cells right there, and ingest that file.",
        tally.rejected() == 1 ? "row" : "rows",
        paths.shown(file));
  }

  private static String export(ExportSet set) {
    return "%s %s%s: "
        .formatted(
            set.profile().id(), set.exportDate(), set.isCorrections() ? ", rows put right" : "");
  }

  static String counted(Tally tally) {
    String text =
        String.format(
            Locale.ROOT,
            "read %,d = %,d unchanged + %,d applied + %,d rejected",
            tally.read(),
            tally.unchanged(),
            tally.applied(),
            tally.rejected());
    return tally.disappeared() == 0
        ? text
        : text + String.format(Locale.ROOT, "; %,d no longer listed", tally.disappeared());
  }

  private List<String> remarks(ImportReport report) {
    List<String> remarks = new ArrayList<>();
    report.remarks().forEach(remark -> remarks.add("  " + remark));
    report.quarantine().map(file -> rejected(report.tally(), file)).ifPresent(remarks::add);
    report.withheld().ifPresent(gap -> remarks.add(withheld(report, gap)));
    if (report.repeatedKeys() > 0) {
      remarks.add(repeatedKeys(report.repeatedKeys()));
    }
    report.reuse().notKept().map(IngestText::notKept).ifPresent(remarks::add);
    return remarks;
  }

  private static String notKept(String why) {
    return "  This export could not be kept for comparison (%s): it is imported, but the next one will take longer, because every row of it has to be read."
        .formatted(why);
  }

  private static String repeatedKeys(long rows) {
    return String.format(
        Locale.ROOT,
        "  %,d %s of another and %s something else: all count. If that is not meant, choose key columns in the profile that tell rows apart.",
        rows,
        rows == 1 ? "row has the key" : "rows have the key",
        rows == 1 ? "says" : "say");
  }

  private static String withheld(ImportReport report, Disappearances.Gap gap) {
    return String.format(
        Locale.ROOT,
        "  %,d of %,d records are missing: additions are in; disappearances are withheld until the next full export, or until you confirm them:%n    withers ingest --source %s --confirm-disappearances %s",
        gap.missing(),
        gap.listed(),
        report.set().profile().id(),
        gap.exportDate());
  }

  private static String unrecognised(String name) {
    return "Expected a file that a profile recognises, but found %s: write a profile for it, or name its source with --source. It was left as it is."
        .formatted(name);
  }
}
