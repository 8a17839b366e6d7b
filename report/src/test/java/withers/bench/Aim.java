package withers.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * What was aimed at, and whether a run holds it. The aims are for ten million rows on two cores
 * with nothing else on them; at other sizes they say where things stand.
 *
 * @param most whether less is better
 */
record Aim(String what, double aim, String unit, boolean most, double measured) {

  private static final double GIGABYTE = 1e9;
  private static final double MILLION = 1e6;
  private static final long LARGE = 10_000_000;
  private static final List<Stage> NOT_OURS =
      List.of(
          Stage.READ_LINES,
          Stage.PARSE,
          Stage.ASK_BY_ARG_MAX,
          Stage.ASK_BY_WINDOW,
          Stage.ENCODE,
          Stage.DECODE);

  /** Those that this run can tell of. */
  static List<Aim> of(BenchRun run) {
    return Stream.of(
            timesDuckDb(run, "first import and judging", 6, Stage.FIRST_IMPORT, Stage.JUDGE_ON_2),
            timesDuckDb(run, "import of the next month", 0.5, Stage.NEXT_IMPORT),
            timesDuckDb(run, "the next month whole, by one run", 1, Stage.NEXT_RUN),
            timesDuckDb(
                run,
                "the next month whole, by three commands",
                1,
                Stage.NEXT_IMPORT,
                Stage.NEXT_RECONCILE,
                Stage.NEXT_LISTS),
            rate(run),
            memory(run),
            log(run),
            trace(run))
        .flatMap(List::stream)
        .toList();
  }

  private static List<Aim> timesDuckDb(BenchRun run, String what, double aim, Stage... stages) {
    OptionalDouble question = run.question();
    if (question.isEmpty() || !run.has(stages)) {
      return List.of();
    }
    double ours = Arrays.stream(stages).mapToDouble(stage -> run.of(stage).seconds()).sum();
    return List.of(new Aim(what, aim, "of DuckDB's time", true, ours / question.getAsDouble()));
  }

  private static List<Aim> rate(BenchRun run) {
    return run
        .find(Stage.JUDGE_ON_2)
        .map(judged -> judged.perSecond() / MILLION)
        .map(rate -> new Aim("replay, fold and rules", 2, "million events/s", false, rate))
        .stream()
        .toList();
  }

  private static List<Aim> memory(BenchRun run) {
    return run.stages().stream()
        .filter(stage -> !NOT_OURS.contains(Stage.of(stage.stage())))
        .mapToLong(stage -> stage.peakBytes().orElse(0))
        .max()
        .stream()
        .mapToObj(
            peak ->
                new Aim(
                    "resident memory, the most of any stage",
                    run.rows() > LARGE ? 2 : 1,
                    "GB",
                    true,
                    peak / GIGABYTE))
        .toList();
  }

  private static List<Aim> log(BenchRun run) {
    return run
        .find(Stage.FIRST_IMPORT)
        .map(done -> (double) done.counted("log-bytes") / done.counted("events"))
        .map(bytes -> new Aim("event log", 40, "bytes an event", true, bytes))
        .stream()
        .toList();
  }

  private static List<Aim> trace(BenchRun run) {
    return run
        .find(Stage.TRACE)
        .map(trace -> new Aim("trace from a cold process", 0.8, "s", true, trace.seconds()))
        .stream()
        .toList();
  }

  boolean isHeld() {
    return most ? measured <= aim : measured >= aim;
  }

  String line() {
    return String.format(
        Locale.ROOT,
        "%-40s %s %5.2f %-18s %8.2f  %s",
        what,
        most ? "at most " : "at least",
        aim,
        unit,
        measured,
        isHeld() ? "held" : "not held");
  }
}
