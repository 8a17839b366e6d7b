package withers.cli;

import java.io.PrintStream;

/**
 * Where a command writes: data to {@code out}, everything else to {@code err}.
 *
 * @param out for data, which scripts may read
 * @param err for messages and progress
 * @param isTerminal whether a person sees {@code err} on a terminal
 */
public record Console(PrintStream out, PrintStream err, boolean isTerminal) {

  /**
   * A system property: {@code true} when standard error is a terminal. Java can't tell, so the
   * launcher does.
   */
  static final String TERMINAL = "withers.terminal";

  /** The streams of this process. */
  public static Console ofThisProcess() {
    return new Console(System.out, System.err, Boolean.getBoolean(TERMINAL));
  }

  /** Writes a line of data. */
  public void print(String line) {
    out.println(line);
  }

  /** Writes a line of message. */
  public void say(String line) {
    err.println(line);
  }

  /**
   * Shows how far a task is, on a terminal; elsewhere nothing. Close it when the task ends.
   *
   * @param task what is being done, in a word or two
   * @param total number of steps; 0 or less when it is not known
   */
  public Progress progress(String task, long total) {
    return isTerminal ? ProgressBarOnTerminal.start(err, task, total) : Progress.SILENT;
  }
}
