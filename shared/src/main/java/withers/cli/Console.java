package withers.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/**
 * Where a command writes: data to {@code out}, everything else to {@code err}.
 *
 * @param out for data, which scripts may read
 * @param err for messages and progress
 * @param isTerminal whether a person sees {@code err} on a terminal
 * @param brake asked with every step of a task that shows how far it is
 */
public record Console(PrintStream out, PrintStream err, boolean isTerminal, Brake brake) {

  /** A console of a command that nothing ends early. */
  public Console(PrintStream out, PrintStream err, boolean isTerminal) {
    this(out, err, isTerminal, Brake.NONE);
  }

  /**
   * A system property: {@code true} when standard error is a terminal. Java can't tell, so the
   * launcher does.
   */
  static final String TERMINAL = "withers.terminal";

  /** The streams of this process, in UTF-8 whatever the system's own character set is. */
  public static Console ofThisProcess() {
    return new Console(
        utf8(FileDescriptor.out), utf8(FileDescriptor.err), Boolean.getBoolean(TERMINAL));
  }

  private static PrintStream utf8(FileDescriptor descriptor) {
    return new PrintStream(new FileOutputStream(descriptor), true, StandardCharsets.UTF_8);
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
   * Shows how far a task is, on a terminal; elsewhere nothing. Close it when the task ends. Each
   * step throws a {@link StoppedException} when the task is to end early.
   *
   * @param task what is being done, in a word or two
   * @param total number of steps; 0 or less when it is not known
   */
  public Progress progress(String task, long total) {
    Progress shown = isTerminal ? ProgressBarOnTerminal.start(err, task, total) : Progress.SILENT;
    return brake == Brake.NONE ? shown : new BrakedProgress(shown, brake);
  }
}
