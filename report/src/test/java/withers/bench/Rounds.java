package withers.bench;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import withers.cli.Console;

/**
 * All stages on the same files, round by round, each round in a workspace that knows nothing yet.
 *
 * @param size rows that were asked for
 * @param mix what happens in the network, and how often
 */
record Rounds(
    StageOptions options,
    BenchWorld world,
    long size,
    String mix,
    String heap,
    Console console,
    Clock clock) {

  /** The least that each stage took. */
  BenchRun run() throws Exception {
    Instant start = clock.instant();
    Machine machine = Machine.here();
    List<BenchRun> rounds = new ArrayList<>();
    for (int round = 1; round <= options.rounds(); round++) {
      world.renewWorkspace();
      BenchRun run =
          new BenchRun(
              start, options.label(), size, options.seed(), mix, heap, machine, stages(round));
      new Sums(run).require();
      rounds.add(run);
    }
    return BenchRun.least(rounds);
  }

  private List<Measured> stages(int round) throws Exception {
    List<Measured> stages = new ArrayList<>();
    for (Stage stage : options.stages()) {
      console.say("Round %d: %s".formatted(round, stage.title()));
      stages.add(options.runner(stage, heap).run(stage, world.folder()));
    }
    return stages;
  }
}
