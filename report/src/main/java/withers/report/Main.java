package withers.report;

import java.time.Clock;
import java.time.ZoneId;
import withers.cli.Console;
import withers.cli.Environment;
import withers.report.cli.Application;
import withers.report.demo.Home;

/** Where the application starts. */
public final class Main {
  private Main() {}

  /**
   * Runs one command and ends the JVM with its exit code.
   *
   * @param args the command line, the command's name first
   */
  public static void main(String... args) {
    Clock clock = Clock.system(ZoneId.systemDefault());
    System.exit(
        Application.commandLine(
                Console.ofThisProcess(), clock, Environment.ofThisProcess(), Home.ofThisProcess())
            .execute(args));
  }
}
