package withers.report;

import picocli.CommandLine;
import withers.report.cli.WithersCommand;

/** Where the application starts. */
public final class Main {
  private Main() {}

  /**
   * Runs one command and ends the JVM with its exit code.
   *
   * @param args the command line, the command's name first
   */
  public static void main(String... args) {
    System.exit(new CommandLine(new WithersCommand()).execute(args));
  }
}
