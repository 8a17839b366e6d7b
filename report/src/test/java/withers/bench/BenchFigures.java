package withers.bench;

import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/** An invented run, for tests of what is made of one. */
final class BenchFigures {

  private BenchFigures() {}

  /** Every stage, 1,000 rows and 2,500 events, all adding up. */
  static BenchRun run() {
    return with(Arrays.stream(Stage.values()).map(BenchFigures::measured).toList());
  }

  /** These stages alone. */
  static BenchRun of(Stage... stages) {
    return with(Arrays.stream(stages).map(BenchFigures::measured).toList());
  }

  /** A run of so many rows in which each of these stages took so long. */
  static BenchRun lasting(long rows, double seconds, Stage... stages) {
    BenchRun run = of(stages);
    return new BenchRun(
        run.startedAt(),
        run.label(),
        rows,
        run.seed(),
        run.mix(),
        run.heap(),
        run.machine(),
        run.stages().stream().map(stage -> lasting(stage, seconds)).toList());
  }

  private static Measured lasting(Measured stage, double seconds) {
    return new Measured(
        stage.stage(),
        stage.count(),
        stage.counts(),
        seconds,
        stage.processorSeconds(),
        stage.ofJvm(),
        stage.peakBytes());
  }

  /** The same run, one stage having counted something else. */
  static BenchRun counting(Stage stage, String name, long count) {
    return with(
        run().stages().stream()
            .map(one -> one.stage().equals(stage.word()) ? counting(one, name, count) : one)
            .toList());
  }

  private static Measured counting(Measured stage, String name, long count) {
    Map<String, Long> counts = new LinkedHashMap<>(stage.counts());
    counts.put(name, count);
    return new Measured(
        stage.stage(),
        stage.count(),
        counts,
        stage.seconds(),
        stage.processorSeconds(),
        stage.ofJvm(),
        stage.peakBytes());
  }

  private static BenchRun with(List<Measured> stages) {
    Machine machine = new Machine(2, 24_000_000_000L, "17.0.15", "Linux amd64", 0.25);
    return new BenchRun(Instant.EPOCH, "abc", 1000, 7, "the demo's mix", "1g", machine, stages);
  }

  private static Measured measured(Stage stage) {
    return new Measured(
        stage.word(),
        stage.unit() == Unit.ROWS ? 1000 : 2500,
        counts(stage),
        0.5 * (1 + stage.ordinal()),
        0.25,
        stage == Stage.PARSE ? Optional.empty() : Optional.of(new JvmTime(0.125, 0.0625)),
        stage == Stage.PARSE ? OptionalLong.empty() : OptionalLong.of(200_000_000));
  }

  private static Map<String, Long> counts(Stage stage) {
    long read = stage == Stage.IMPORT_AGAIN ? 0 : 1000;
    boolean applies = stage == Stage.FIRST_IMPORT || stage == Stage.NEXT_IMPORT;
    Map<String, Long> counts = new LinkedHashMap<>();
    counts.put("rows", 1000L);
    counts.put("read", read);
    counts.put("applied", applies ? 990L : 0L);
    counts.put("unchanged", applies || read == 0 ? 0L : 990L);
    counts.put("rejected", read / 100);
    counts.put("events", applies ? 2500L : 0L);
    counts.put("contacts", 500L);
    counts.put("export-bytes", 150_000L);
    counts.put("log-bytes", 60_000L);
    counts.put("vault-bytes", 75_000L);
    counts.put("findings", 40L);
    counts.put("chips", 400L);
    counts.put("digest", 77L);
    counts.put("bytes", 100_000L);
    counts.put("animals", 390L);
    counts.put("assessed", 50L);
    counts.put("found", 39L);
    return counts;
  }
}
