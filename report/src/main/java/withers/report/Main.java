package withers.report;

import java.time.Clock;
import java.time.ZoneId;
import withers.cli.Console;
import withers.cli.Environment;
import withers.cli.Operator;
import withers.report.cli.Application;
import withers.report.demo.Home;
import withers.report.send.Pause;

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
        new Application(
                Console.ofThisProcess(),
                clock,
                Environment.ofThisProcess(),
                Home.ofThisProcess(),
                Operator.ofThisProcess(),
                Pause::real)
            .execute(args));
  }
}
