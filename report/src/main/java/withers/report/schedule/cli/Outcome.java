package withers.report.schedule.cli;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.cli.ExitCode;

/**
 * How the actions of a job ended.
 *
 * @param code of the first command that stopped the job, else the first that is not {@code DONE}
 * @param command the words of that command
 * @param messages the last that it said, without details of people
 * @param isStopped whether it was ended early, as somebody asked
 */
record Outcome(int code, List<String> command, List<String> messages, boolean isStopped) {
  static final Outcome DONE = new Outcome(ExitCode.DONE.number(), List.of(), List.of(), false);

  /** Of a job that was ended from outside too often. */
  static final Outcome GIVEN_UP =
      new Outcome(ExitCode.INTERNAL.number(), List.of(), List.of(), false);

  Outcome {
    command = List.copyOf(command);
    messages = List.copyOf(messages);
  }

  /** The code's name; {@code UNKNOWN} of one that no command of ours ends with. */
  String name() {
    return exit().map(ExitCode::name).orElse("UNKNOWN");
  }

  /** What the code tells, in sentences. */
  String meaning() {
    return exit().map(ExitCode::meaning).orElse("");
  }

  private Optional<ExitCode> exit() {
    return Stream.of(ExitCode.values()).filter(exit -> exit.number() == code).findFirst();
  }

  /** Whether somebody has to look after it before its next time. */
  boolean isFailure() {
    return !isStopped && code > ExitCode.ATTENTION.number();
  }

  boolean isBusy() {
    return code == ExitCode.BUSY.number();
  }

  /** Whether what comes after it is done all the same. */
  boolean mayGoOn() {
    return !isStopped
        && (code == ExitCode.DONE.number()
            || code == ExitCode.ATTENTION.number()
            || code == ExitCode.INPUT_REFUSED.number());
  }
}
