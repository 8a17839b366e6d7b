package withers.bench;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * One run of the benchmark: what was asked, on which machine, and what every stage took.
 *
 * @param rows how many were asked for; the stages tell how many there were
 * @param mix what happens in the network, and how often
 * @param heap the most that each stage's Java heap may take, as {@code -Xmx} has it
 * @param label of the user's choice, such as a commit; may be empty
 */
record BenchRun(
    Instant startedAt,
    String label,
    long rows,
    long seed,
    String mix,
    String heap,
    Machine machine,
    List<Measured> stages) {

  BenchRun {
    stages = List.copyOf(stages);
  }

  /** Of rounds of the same stages, the least of each. */
  static BenchRun least(List<BenchRun> rounds) {
    BenchRun first = rounds.get(0);
    List<Measured> least = new ArrayList<>();
    for (int i = 0; i < first.stages.size(); i++) {
      int stage = i;
      least.add(
          rounds.stream()
              .map(round -> round.stages.get(stage))
              .reduce(Measured::least)
              .orElseThrow());
    }
    return new BenchRun(
        first.startedAt,
        first.label,
        first.rows,
        first.seed,
        first.mix,
        first.heap,
        first.machine,
        least);
  }

  Measured of(Stage stage) {
    return find(stage)
        .orElseThrow(() -> new IllegalStateException("Expected %s to have run".formatted(stage)));
  }

  Optional<Measured> find(Stage stage) {
    return stages.stream().filter(one -> one.stage().equals(stage.word())).findFirst();
  }

  /** Seconds that DuckDB takes from the files to its answer, the quicker way. */
  OptionalDouble question() {
    return Stream.of(Stage.ASK_BY_ARG_MAX, Stage.ASK_BY_WINDOW)
        .flatMap(stage -> find(stage).stream())
        .mapToDouble(Measured::seconds)
        .min();
  }

  boolean has(Stage... all) {
    return List.of(all).stream().allMatch(stage -> find(stage).isPresent());
  }
}
