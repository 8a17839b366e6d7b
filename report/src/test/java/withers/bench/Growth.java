package withers.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * How the time of each stage grows with the size of runs: the exponent e of time = c * size^e, by
 * least squares on logarithms. 1 is as fast as the size, 2 as its square.
 */
record Growth(List<BenchRun> runs) {

  private static final double AIM = 1.15;

  Growth {
    runs = List.copyOf(runs);
  }

  /** None for a single size. */
  List<String> lines() {
    List<String> lines = new ArrayList<>();
    for (Stage stage : Stage.values()) {
      if (isMeasured(stage)) {
        double exponent = exponent(stage);
        lines.add(
            String.format(
                Locale.ROOT,
                "%-34s time grows with the size's power %5.2f  (at most %.2f: %s)",
                stage.title(),
                exponent,
                AIM,
                exponent <= AIM ? "held" : "not held"));
      }
    }
    return lines;
  }

  private boolean isMeasured(Stage stage) {
    return stage.unit() != Unit.NUMBERS
        && runs.stream().mapToLong(BenchRun::rows).distinct().count() > 1
        && runs.stream().allMatch(run -> run.has(stage));
  }

  /** The slope of the line through the points (log size, log seconds). */
  double exponent(Stage stage) {
    double meanX = runs.stream().mapToDouble(Growth::size).average().orElseThrow();
    double meanY = runs.stream().mapToDouble(run -> time(run, stage)).average().orElseThrow();
    double above = 0;
    double below = 0;
    for (BenchRun run : runs) {
      above += (size(run) - meanX) * (time(run, stage) - meanY);
      below += (size(run) - meanX) * (size(run) - meanX);
    }
    return above / below;
  }

  private static double size(BenchRun run) {
    return Math.log((double) run.rows());
  }

  private static double time(BenchRun run, Stage stage) {
    return Math.log(run.of(stage).seconds());
  }
}
