package withers.cli;

/** Shows how far a task is, until it is to end. */
record BrakedProgress(Progress shown, Brake brake) implements Progress {
  @Override
  public void advance(long steps) {
    shown.advance(steps);
    brake.check();
  }

  @Override
  public void close() {
    shown.close();
  }
}
