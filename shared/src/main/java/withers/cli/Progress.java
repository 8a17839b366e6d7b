package withers.cli;

/** Shows how far a task is. Safe for several threads. */
public interface Progress extends AutoCloseable {

  /** Shows nothing. */
  Progress SILENT =
      new Progress() {
        @Override
        public void advance(long steps) {}

        @Override
        public void close() {}
      };

  /** Counts steps as done. */
  void advance(long steps);

  @Override
  void close();
}
