package withers.bench;

import java.util.List;
import java.util.Optional;

/** What must add up in every run: a fast stage that lost something is no measurement. */
record Sums(BenchRun run) {

  /** Those that find the same, since they judge the same day of the same log. */
  private static final List<Stage> JUDGES =
      List.of(Stage.JUDGE_ON_1, Stage.JUDGE_ON_2, Stage.RECONCILE, Stage.RECONCILE_AGAIN);

  /**
   * Looks at the counts of all stages that ran.
   *
   * @throws IllegalStateException when something does not add up
   */
  void require() {
    Optional<Long> rows = run.find(Stage.READ_LINES).map(Measured::count);
    same("parsed rows", rows, run.find(Stage.PARSE).map(Measured::count));
    same("imported rows", rows, counted(Stage.FIRST_IMPORT, "read"));
    imports();
    same(
        "rows read again",
        counted(Stage.IMPORT_UNCHANGED, "rows"),
        counted(Stage.IMPORT_UNCHANGED, "read"));
    Optional<Long> none = Optional.of(0L);
    same("events of the same rows", none, counted(Stage.IMPORT_UNCHANGED, "events"));
    same("events of the same files", none, counted(Stage.IMPORT_AGAIN, "events"));
    same(
        "chips by a window",
        counted(Stage.ASK_BY_ARG_MAX, "chips"),
        counted(Stage.ASK_BY_WINDOW, "chips"));
    replays(counted(Stage.FIRST_IMPORT, "events"));
    findings();
    same(
        "findings by one run",
        counted(Stage.NEXT_RECONCILE, "findings"),
        counted(Stage.NEXT_RUN, "findings"));
  }

  private void imports() {
    for (Stage stage : Stage.IMPORTS) {
      run.find(stage)
          .ifPresent(
              one ->
                  same(
                      "rows of " + stage.word(),
                      Optional.of(one.counted("read")),
                      Optional.of(
                          one.counted("applied")
                              + one.counted("unchanged")
                              + one.counted("rejected"))));
    }
  }

  private void replays(Optional<Long> events) {
    for (Stage stage : Stage.values()) {
      if (stage.unit() == Unit.EVENTS) {
        same("events of " + stage.word(), events, run.find(stage).map(Measured::count));
      }
    }
  }

  private void findings() {
    List<Stage> judges = JUDGES.stream().filter(stage -> run.has(stage)).toList();
    for (int i = 1; i < judges.size(); i++) {
      for (String count : List.of("findings", "digest")) {
        same(
            count + " of " + judges.get(i).word(),
            counted(judges.get(0), count),
            counted(judges.get(i), count));
      }
    }
  }

  private Optional<Long> counted(Stage stage, String name) {
    return run.find(stage).map(one -> one.counted(name));
  }

  /** The same, if both were measured. */
  private static void same(String what, Optional<Long> expected, Optional<Long> found) {
    if (expected.isPresent() && found.isPresent() && !expected.equals(found)) {
      throw new IllegalStateException(
          "Expected %d %s, but found %d".formatted(expected.get(), what, found.get()));
    }
  }
}
