package withers.report.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import withers.cli.Console;
import withers.cli.Environment;
import withers.cli.Operator;
import withers.point.Point;
import withers.report.demo.Home;
import withers.testing.KillableJava;

/**
 * A command in a Java of its own, on a clock that stands still, which waits at a point to be
 * killed.
 */
final class CommandProcess {
  private CommandProcess() {}

  static KillableJava stoppingAt(Point point, Instant now, List<String> command)
      throws IOException {
    return KillableJava.start(
        CommandProcess.class,
        Stream.concat(Stream.of(point.name(), now.toString()), command.stream())
            .toArray(String[]::new));
  }

  /** The point first, then the time, then a command line. */
  public static void main(String... args) {
    PrintStream nowhere = new PrintStream(PrintStream.nullOutputStream());
    System.exit(
        new Application(
                new Console(nowhere, System.err, false),
                Clock.fixed(Instant.parse(args[1]), ZoneOffset.UTC),
                new Environment(Map.of()),
                new Home(Optional.empty()),
                Operator.NOBODY,
                time -> {},
                KillableJava.waitingAt(args[0]))
            .execute(Arrays.copyOfRange(args, 2, args.length)));
  }
}
