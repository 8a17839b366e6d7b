package withers.reconcile.cli;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.finding.Band;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.Life;
import withers.finding.NotJudged;
import withers.finding.RunResult;
import withers.organisation.Organisation;
import withers.workspace.Workspace;

/** A run in numbers, as lines of text. */
final class RunText {
  private final RunResult run;
  private final Workspace workspace;

  private RunText(RunResult run, Workspace workspace) {
    this.run = run;
    this.workspace = workspace;
  }

  static List<String> of(RunResult run, Workspace workspace) {
    RunText text = new RunText(run, workspace);
    List<String> lines = new ArrayList<>();
    lines.add(
        "%,d animals judged as of %s; findings: %,d"
            .formatted(run.animals(), run.asOf(), run.findings().size()));
    lines.add("");
    lines.addAll(text.table());
    lines.add("");
    lines.add(
        "Follow-ups: %,d opened, %,d still open, %,d closed"
            .formatted(run.opened().size(), run.stillOpen().size(), run.closed().size()));
    if (!run.settled().isEmpty()) {
      lines.add("Settled by people, and not listed: %,d".formatted(run.settled().size()));
    }
    long resting = run.lives().stream().filter(Life::rests).count();
    if (resting > 0) {
      lines.add("Answered or put off, and not listed: %,d".formatted(resting));
    }
    lines.addAll(text.notJudged());
    lines.add("Run %s".formatted(run.id()));
    return lines;
  }

  private List<String> table() {
    Map<FindingKind, Map<Band, Long>> counts = new EnumMap<>(FindingKind.class);
    for (Finding finding : run.findings()) {
      counts
          .computeIfAbsent(finding.kind(), kind -> new EnumMap<>(Band.class))
          .merge(finding.priority().band(), 1L, Long::sum);
    }
    List<String> lines = new ArrayList<>();
    lines.add(row("", Stream.of(Band.values()).map(Band::word).toList()));
    counts.forEach((kind, bands) -> lines.add(row(kind.word(), cells(bands))));
    return lines;
  }

  private static List<String> cells(Map<Band, Long> counts) {
    return Stream.of(Band.values())
        .map(band -> counts.containsKey(band) ? "%,d".formatted(counts.get(band)) : "")
        .toList();
  }

  private static String row(String title, List<String> cells) {
    String columns = cells.stream().map("%14s"::formatted).collect(Collectors.joining());
    return "  %-24s%s".formatted(title, columns).stripTrailing();
  }

  private List<String> notJudged() {
    Map<String, Long> counts =
        run.notJudged().stream()
            .collect(Collectors.groupingBy(this::lack, TreeMap::new, Collectors.counting()));
    return counts.entrySet().stream()
        .map(lack -> "Not judged: %,d, %s".formatted(lack.getValue(), lack.getKey()))
        .toList();
  }

  private String lack(NotJudged one) {
    String name =
        workspace
            .directory()
            .find(one.registry())
            .map(Organisation::name)
            .orElse(one.registry().value());
    return "%s: %s".formatted(name, one.reason().name().toLowerCase(Locale.ROOT).replace('_', ' '));
  }
}
