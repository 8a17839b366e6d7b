package withers.report.schedule.cli;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import withers.testing.KillableJava;

/** A schedule in a Java of its own that can be frozen, and waits at a point if asked to. */
public final class StoppableScheduler {
  private StoppableScheduler() {}

  /**
   * Starts one.
   *
   * @param now what its clock shows when it is first looked at
   * @param point a point's name, or none's
   * @param command the command line
   */
  public static KillableJava start(String now, String point, String... command) throws IOException {
    return KillableJava.start(
        StoppableScheduler.class,
        Stream.concat(Stream.of(now, point), List.of(command).stream()).toArray(String[]::new));
  }

  /** The time, the point, and a command line. */
  public static void main(String... args) {
    System.exit(
        SchedulingProcess.run(
            args[0], KillableJava.waitingAt(args[1]), Arrays.copyOfRange(args, 2, args.length)));
  }
}
