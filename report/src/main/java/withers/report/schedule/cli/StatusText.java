package withers.report.schedule.cli;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.report.text.OneLine;
import withers.report.watch.Standing;

/**
 * How a workspace stands, for people to read.
 *
 * @param zone in which times are told
 */
record StatusText(Standing standing, ZoneId zone) {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  List<String> lines() {
    List<String> lines = new ArrayList<>();
    part("Jobs", standing.jobs().stream().map(this::job).toList(), "none is scheduled", lines);
    part("Imports", standing.imports().stream().map(this::imported).toList(), "none yet", lines);
    part("Run", standing.run().stream().flatMap(StatusText::run).toList(), "none yet", lines);
    part("Mail", mails(), "none was sent", lines);
    part("Waits for somebody", waiting(), "nothing", lines);
    return lines;
  }

  private static void part(String title, List<String> said, String nothing, List<String> lines) {
    if (said.isEmpty()) {
      lines.add(title + ": " + nothing);
    } else {
      lines.add(title + ":");
      said.forEach(line -> lines.add("  " + OneLine.of(line)));
    }
  }

  private String job(Standing.Job job) {
    String last =
        job.state()
            .last()
            .map(
                end ->
                    "last ended on %s with %d%s"
                        .formatted(time(end.ended()), end.code(), end.isGood() ? "" : " (failed)"))
            .orElse("nothing done yet");
    return "%s: next on %s; %s%s"
        .formatted(
            job.name(),
            job.next().map(this::time).orElse("no day to come"),
            last,
            job.state()
                .running()
                .map(start -> "; begun on %s, and not ended".formatted(time(start.begun())))
                .orElse(""));
  }

  private String imported(Standing.Import one) {
    return String.format(
        Locale.ROOT,
        "%s: export of %s, on %s: read %,d = %,d unchanged + %,d applied + %,d rejected",
        one.source(),
        one.exportDate(),
        time(one.at()),
        one.tally().read(),
        one.tally().unchanged(),
        one.tally().applied(),
        one.tally().rejected());
  }

  private static Stream<String> run(Standing.Run run) {
    return Stream.concat(
        Stream.of(summary(run)), run.madeWith().stream().map(line -> "made with " + line));
  }

  private static String summary(Standing.Run run) {
    return String.format(
        Locale.ROOT,
        "%s, as of %s: %,d animals; %,d new, %,d still open, %,d settled by new records",
        run.id(),
        run.asOf(),
        run.animals(),
        run.opened(),
        run.stillOpen(),
        run.closed());
  }

  private List<String> mails() {
    Map<String, Long> mails = new TreeMap<>(standing.mails());
    return mails.isEmpty()
        ? List.of()
        : List.of(
            mails.entrySet().stream()
                .map(step -> String.format(Locale.ROOT, "%,d %s", step.getValue(), step.getKey()))
                .collect(Collectors.joining(", ")));
  }

  /** What somebody has to decide or do, each with what to type where there is something. */
  List<String> waiting() {
    List<String> waiting = new ArrayList<>();
    standing.imports().forEach(one -> withheld(one, waiting));
    new TreeMap<>(standing.refused())
        .forEach((file, why) -> waiting.add("inbox/%s: %s".formatted(file, why)));
    standing
        .quarantine()
        .forEach(file -> waiting.add("quarantine/%s: rows to put right".formatted(file)));
    standing
        .unsure()
        .forEach(
            id ->
                waiting.add(
                    "%s: nobody knows whether it got its list: withers deliveries".formatted(id)));
    standing
        .run()
        .filter(run -> run.questions() > 0)
        .ifPresent(
            run ->
                waiting.add(
                    String.format(
                        Locale.ROOT,
                        "%,d questions that somebody may be able to answer: they stand on the lists",
                        run.questions())));
    return waiting;
  }

  private static void withheld(Standing.Import one, List<String> waiting) {
    one.withheld()
        .forEach(
            day ->
                waiting.add(
                    "%s %s: disappearances are withheld: withers ingest --source %s --confirm-disappearances %s"
                        .formatted(one.source(), day, one.source(), day)));
  }

  private String time(Instant instant) {
    return "%s (%s)".formatted(TIME.format(instant.atZone(zone)), zone.getId());
  }
}
