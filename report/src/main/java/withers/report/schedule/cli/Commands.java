package withers.report.schedule.cli;

import java.util.List;
import withers.cli.Console;
import withers.report.send.Pause;

/** Runs commands, as somebody types them. */
@FunctionalInterface
public interface Commands {

  /**
   * Runs one; nobody is at the terminal.
   *
   * @param words its name first
   * @return its exit code
   */
  int run(List<String> words, Console console, Pause pause);
}
