package withers.bench;

import java.util.List;

/** What must add up in every run: a fast stage that lost something is no measurement. */
record Sums(BenchRun run) {

  /**
   * Looks at all counts.
   *
   * @throws IllegalStateException when something does not add up
   */
  void require() {
    Measured first = run.of(Stage.FIRST_IMPORT);
    long rows = run.of(Stage.READ_LINES).count();
    same("parsed rows", rows, run.of(Stage.PARSE).count());
    long chips = run.of(Stage.ASK_BY_ARG_MAX).counted("chips");
    same("chips by a window", chips, run.of(Stage.ASK_BY_WINDOW).counted("chips"));
    same("imported rows", rows, first.counted("read"));
    imports();
    same("rows read again", rows, run.of(Stage.IMPORT_UNCHANGED).counted("read"));
    same("events of the same rows", 0, run.of(Stage.IMPORT_UNCHANGED).counted("events"));
    same("events of the same files", 0, run.of(Stage.IMPORT_AGAIN).counted("events"));
    replays(first.counted("events"));
  }

  private void imports() {
    for (Stage stage : Stage.IMPORTS) {
      Measured one = run.of(stage);
      long kept = one.counted("applied") + one.counted("unchanged") + one.counted("rejected");
      same("rows of " + stage.word(), one.counted("read"), kept);
    }
  }

  private void replays(long events) {
    for (Stage stage : Stage.values()) {
      if (stage.unit() == Unit.EVENTS) {
        same("events of " + stage.word(), events, run.of(stage).count());
      }
    }
    long findings = run.of(Stage.JUDGE_ON_1).counted("findings");
    same("findings on 2 threads", findings, run.of(Stage.JUDGE_ON_2).counted("findings"));
    for (Stage stage : List.of(Stage.JUDGE_KEEPING, Stage.JUDGE_KEPT)) {
      same("findings of " + stage.word(), findings, run.of(stage).counted("findings"));
    }
  }

  private static void same(String what, long expected, long found) {
    if (expected != found) {
      throw new IllegalStateException(
          "Expected %d %s, but found %d".formatted(expected, what, found));
    }
  }
}
