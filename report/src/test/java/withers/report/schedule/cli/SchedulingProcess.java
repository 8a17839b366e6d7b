package withers.report.schedule.cli;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import withers.cli.Console;
import withers.cli.Environment;
import withers.report.cli.Application;
import withers.report.cli.Operator;
import withers.report.demo.Home;
import withers.report.send.Pause;

/** The application, on a clock that shows a given time when it starts, and goes on from there. */
public final class SchedulingProcess {
  private SchedulingProcess() {}

  /** The time first, then a command line. */
  public static void main(String... args) {
    Clock system = Clock.systemUTC();
    Clock clock = Clock.offset(system, Duration.between(system.instant(), Instant.parse(args[0])));
    System.exit(
        Application.commandLine(
                Console.ofThisProcess(),
                clock.withZone(ZoneOffset.UTC),
                new Environment(Map.of()),
                new Home(Optional.empty()),
                Operator.NOBODY,
                Pause::real)
            .execute(java.util.Arrays.copyOfRange(args, 1, args.length)));
  }
}
