package withers.report.schedule.cli;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.cli.Environment;
import withers.cli.Operator;
import withers.point.Point;
import withers.point.Points;
import withers.report.cli.Application;
import withers.report.demo.Home;
import withers.testing.KillableJava;
import withers.workspace.Workspace;

/** All jobs of a workspace, woken once, as its schedule does, but on a clock that stands still. */
public final class OneNight {
  private OneNight() {}

  /**
   * Does what is due.
   *
   * @return what the schedule's log says
   */
  public static List<String> of(Path folder, Instant now, Points points) {
    Clock clock = Clock.fixed(now, ZoneOffset.UTC);
    Workspace workspace = Workspace.open(folder, clock, points);
    List<String> said = new ArrayList<>();
    ScheduleLog log = new ScheduleLog(clock, false, said::add);
    JobCommands work =
        new JobCommands(
            commands(clock, points),
            folder.toString(),
            List.of(),
            log,
            new Stop(),
            (command, time) -> {});
    JobRunner runner =
        new JobRunner(
            new JobFiles(workspace.paths().schedule()),
            clock,
            (job, about, right) -> work.perform(job.actions(), about, right),
            log,
            (job, outcome) -> {},
            points);
    workspace.settings().schedule().forEach(runner::wake);
    return said;
  }

  private static Commands commands(Clock clock, Points points) {
    return (words, console, pause) ->
        new Application(
                console,
                clock,
                new Environment(Map.of()),
                new Home(Optional.empty()),
                Operator.NOBODY,
                pause,
                points)
            .execute(words.toArray(String[]::new));
  }

  /** Up to which time nothing of a job is left to be done. */
  public static Map<String, Instant> settled(Path folder, Instant now) {
    Workspace workspace = Workspace.open(folder, Clock.fixed(now, ZoneOffset.UTC));
    JobFiles book = new JobFiles(workspace.paths().schedule());
    return workspace.settings().schedule().stream()
        .collect(
            java.util.stream.Collectors.toMap(
                job -> job.name(), job -> book.read(job, now).settled()));
  }

  /** A night that waits at a point to be killed: folder, time, point. */
  public static void main(String... args) {
    of(Path.of(args[0]), Instant.parse(args[1]), KillableJava.waitingAt(args[2]));
  }

  /** Begins such a night in a Java of its own. */
  public static KillableJava stoppingAt(Point point, Path folder, Instant now)
      throws java.io.IOException {
    return KillableJava.start(OneNight.class, folder.toString(), now.toString(), point.name());
  }
}
