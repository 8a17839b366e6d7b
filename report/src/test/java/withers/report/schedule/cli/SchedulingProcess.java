package withers.report.schedule.cli;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import withers.cli.Console;
import withers.cli.Environment;
import withers.cli.Operator;
import withers.point.Points;
import withers.report.cli.Application;
import withers.report.demo.Home;
import withers.report.send.Pause;

/**
 * The application, on a clock that shows a given time when it is first looked at, and goes on from
 * there: however long Java takes to start.
 */
public final class SchedulingProcess {
  private SchedulingProcess() {}

  /** The time first, then a command line. */
  public static void main(String... args) {
    System.exit(run(args[0], Points.NONE, Arrays.copyOfRange(args, 1, args.length)));
  }

  static int run(String time, Points points, String... args) {
    Clock clock =
        new Begun(Instant.parse(time), Clock.systemUTC(), ZoneOffset.UTC, new AtomicReference<>());
    return new Application(
            Console.ofThisProcess(),
            clock,
            new Environment(Map.of()),
            new Home(Optional.empty()),
            Operator.NOBODY,
            Pause::real,
            points)
        .execute(args);
  }

  /** Whatever zones it is read in, it began once. */
  private static final class Begun extends Clock {
    private final Instant shown;
    private final Clock machine;
    private final ZoneId zone;
    private final AtomicReference<Instant> first;

    private Begun(Instant shown, Clock machine, ZoneId zone, AtomicReference<Instant> first) {
      this.shown = shown;
      this.machine = machine;
      this.zone = zone;
      this.first = first;
    }

    @Override
    public Instant instant() {
      Instant now = machine.instant();
      first.compareAndSet(null, now);
      return shown.plus(Duration.between(first.get(), now));
    }

    @Override
    public ZoneId getZone() {
      return zone;
    }

    @Override
    public Clock withZone(ZoneId other) {
      return new Begun(shown, machine, other, first);
    }
  }
}
