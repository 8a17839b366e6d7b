package withers.cli;

/**
 * Ends a task early, at one of the points where nothing is half done: whoever reaches one asks.
 * Safe for several threads.
 */
@FunctionalInterface
public interface Brake {

  /** Never ends anything. */
  Brake NONE = () -> {};

  /**
   * Returns when the task may go on.
   *
   * @throws StoppedException when it is to end
   */
  void check();
}
