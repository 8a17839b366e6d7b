package withers.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What memory each stage takes under heaps of several sizes, and how long it takes there. */
record Heaps(List<BenchRun> runs) {

  Heaps {
    runs = List.copyOf(runs);
  }

  /** None for a single heap. */
  List<String> lines() {
    List<String> lines = new ArrayList<>();
    if (runs.stream().map(BenchRun::heap).distinct().count() > 1) {
      for (Stage stage : Stage.values()) {
        if (runs.stream().allMatch(run -> run.has(stage))) {
          lines.add(line(stage));
        }
      }
    }
    return lines;
  }

  private String line(Stage stage) {
    return String.format(
        Locale.ROOT,
        "%-34s %s",
        stage.title(),
        runs.stream().map(run -> cell(run, run.of(stage))).collect(Collectors.joining("   ")));
  }

  private static String cell(BenchRun run, Measured stage) {
    return String.format(
        Locale.ROOT,
        "%,d rows, heap %s: %5.0f MB %8.2f s",
        run.rows(),
        run.heap(),
        stage.peakBytes().orElse(0) / 1e6,
        stage.seconds());
  }
}
