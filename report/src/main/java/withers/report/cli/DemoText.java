package withers.report.cli;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import withers.cli.Console;
import withers.finding.Finding;
import withers.ingest.ImportReport;
import withers.ingest.ImportReport.Result;
import withers.ingest.Ingested;
import withers.log.Tally;
import withers.report.demo.Round;
import withers.report.list.Listed;
import withers.report.overview.Totals;
import withers.report.publish.Published;
import withers.report.text.Texts;
import withers.workspace.Workspace;

/**
 * Tells how the demo goes.
 *
 * @param command starts this program from a shell
 */
record DemoText(Console console, Workspace workspace, String command) {

  /** One round: what came in, what was found, what changed. */
  void tell(Round round, MonthlyRun.Done done) {
    Texts texts = Texts.in(workspace.settings().language());
    console.print(round.name() + ", as of " + texts.date(round.asOf()));
    console.print("  " + imports(done.ingested()));
    done.ingested().refusals().forEach(refusal -> console.say("  " + refusal));
    Totals.lines(done.published().overview(), texts).forEach(line -> console.print("  " + line));
    console.print("");
  }

  private static String imports(Ingested ingested) {
    List<Tally> tallies =
        ingested.reports().stream()
            .filter(report -> report.result() != Result.IMPORTED_BEFORE)
            .map(ImportReport::tally)
            .toList();
    Tally all = tallies.stream().reduce(Tally.NOTHING, DemoText::together);
    return "%,d new exports: %,d rows, of which %,d new, %,d unchanged, %,d rejected; %,d events"
        .formatted(
            tallies.size(),
            all.read(),
            all.applied(),
            all.unchanged(),
            all.rejected(),
            all.events());
  }

  private static Tally together(Tally one, Tally other) {
    return new Tally(
        one.read() + other.read(),
        one.applied() + other.applied(),
        one.unchanged() + other.unchanged(),
        one.rejected() + other.rejected(),
        one.disappeared() + other.disappeared(),
        one.events() + other.events());
  }

  /** Where to look, after the last round. */
  void tellWhereToLook(MonthlyRun.Done last) {
    tellFiles(last.published());
    last.run().findings().stream()
        .findFirst()
        .map(Finding::anchor)
        .ifPresent(chip -> line("one number", traceCommand(last) + chip.display()));
  }

  /** The same of a demo whose log ends with its broker. */
  void tellWhatStays(MonthlyRun.Done last) {
    tellFiles(last.published());
    console.print("");
    console.print(
        "The broker was the demo's own and ends with it, so other commands find no log here.");
    console.print(
        "On one that stays they do: %s demo --log kafka --bootstrap HOST:PORT".formatted(command));
  }

  private void tellFiles(Published published) {
    console.print("Where to look:");
    longest(published).ifPresent(list -> place("one list", file(published, list)));
    place("the overview", published.folder().resolve("overview.html"));
    place("all lists", published.folder());
    place("the mails", published.outbox());
  }

  private static Optional<Listed> longest(Published published) {
    return published.lists().stream().max(Comparator.comparingInt(Listed::size));
  }

  private static Path file(Published published, Listed list) {
    return published.folder().resolve(list.organisation().id().value()).resolve("list.html");
  }

  private void place(String what, Path where) {
    line(what, where.toString());
  }

  private void line(String what, String where) {
    console.print("  %-14s%s".formatted(what, where));
  }

  /** As of the demo's day: its records may be dated after today. */
  private String traceCommand(MonthlyRun.Done last) {
    return "%s trace --workspace %s --as-of %s "
        .formatted(command, workspace.paths().root(), last.run().asOf());
  }
}
