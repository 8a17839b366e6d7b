package withers.bench;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

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

  Measured of(Stage stage) {
    return find(stage)
        .orElseThrow(() -> new IllegalStateException("Expected %s to have run".formatted(stage)));
  }

  Optional<Measured> find(Stage stage) {
    return stages.stream().filter(one -> one.stage().equals(stage.word())).findFirst();
  }
}
