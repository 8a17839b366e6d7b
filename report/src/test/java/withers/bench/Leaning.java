package withers.bench;

import java.util.List;

/**
 * A stage, and what of the machine it leans on: the least time that its bytes take.
 *
 * @param limit the bare work
 * @param counting a stage that counted the bytes
 * @param bytes the names of those counts
 */
record Leaning(Stage stage, Stage limit, Stage counting, List<String> bytes) {

  static final List<Leaning> ALL =
      List.of(
          own(Stage.FIRST_IMPORT, Stage.WRITE_SQLITE, "log-bytes", "vault-bytes"),
          own(Stage.IMPORT_AGAIN, Stage.READ_LINES, "export-bytes"),
          own(Stage.IMPORT_UNCHANGED, Stage.READ_LINES, "export-bytes"),
          own(Stage.NEXT_IMPORT, Stage.READ_LINES, "export-bytes"),
          own(Stage.ENCODE, Stage.COPY, "bytes"),
          own(Stage.DECODE, Stage.COPY, "bytes"),
          log(Stage.REPLAY_ON_1),
          log(Stage.REPLAY_ON_2),
          log(Stage.JUDGE_ON_1),
          log(Stage.JUDGE_ON_2),
          log(Stage.RECONCILE),
          log(Stage.RECONCILE_AGAIN),
          log(Stage.NEXT_RECONCILE),
          own(Stage.LISTS, Stage.WRITE_FILE, "bytes"),
          own(Stage.NEXT_LISTS, Stage.WRITE_FILE, "bytes"));

  private static Leaning own(Stage stage, Stage limit, String... bytes) {
    return new Leaning(stage, limit, stage, List.of(bytes));
  }

  /** On the whole log's bytes. */
  private static Leaning log(Stage stage) {
    return new Leaning(stage, Stage.DECOMPRESS, Stage.DECOMPRESS, List.of("bytes"));
  }

  Leaning {
    bytes = List.copyOf(bytes);
  }

  boolean isIn(BenchRun run) {
    return run.has(stage, limit, counting);
  }

  long bytes(BenchRun run) {
    return bytes.stream().mapToLong(run.of(counting)::counted).sum();
  }

  /** Seconds that the bare work would take on that many bytes. */
  double least(BenchRun run) {
    Measured bare = run.of(limit);
    return bare.seconds() * bytes(run) / bare.counted("bytes");
  }
}
