package withers.ingest.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import withers.cli.Console;
import withers.ingest.ExportSet;
import withers.ingest.ImportReport;
import withers.ingest.Ingested;
import withers.ingest.change.Disappearances;
import withers.log.Tally;
import withers.workspace.WorkspacePaths;

/** Tells people what became of exports: results to standard output, the rest as messages. */
public final class IngestText {

  private final WorkspacePaths paths;

  public IngestText(WorkspacePaths paths) {
    this.paths = paths;
  }

  /** Tells everything. */
  public void tell(Ingested ingested, Console console) {
    if (ingested.reports().isEmpty() && ingested.refusals().isEmpty()) {
      console.print("Nothing to import.");
    }
    for (ImportReport report : ingested.reports()) {
      console.print(line(report));
      remarks(report).forEach(console::say);
    }
    ingested.refusals().forEach(refusal -> console.say("withers: " + refusal));
    ingested.unrecognised().stream()
        .map(IngestText::unrecognised)
        .forEach(message -> console.say("withers: " + message));
  }

  private static String line(ImportReport report) {
    return export(report.set())
        + switch (report.result()) {
          case IMPORTED -> counted(report.tally());
          case NOTHING_NEW -> counted(report.tally()) + "; nothing new";
          case IMPORTED_BEFORE -> "imported before; nothing new";
        };
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
    report
        .quarantine()
        .ifPresent(
            file ->
                remarks.add(
                    String.format(
                        Locale.ROOT,
                        "  Rejected %s with reasons: %s. Put the cells right there, and ingest that file.",
                        report.tally().rejected() == 1 ? "row" : "rows",
                        paths.shown(file))));
    report.withheld().ifPresent(gap -> remarks.add(withheld(report, gap)));
    if (report.repeatedKeys() > 0) {
      remarks.add(repeatedKeys(report.repeatedKeys()));
    }
    return remarks;
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
