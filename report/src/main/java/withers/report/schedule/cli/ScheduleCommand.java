package withers.report.schedule.cli;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.WorkspaceOption;
import withers.report.schedule.Timetable;
import withers.report.schedule.cli.ScheduleLog.About;
import withers.report.schedule.postgres.JobDatabase;
import withers.report.schedule.postgres.QuartzStore;
import withers.schedule.ScheduledJob;
import withers.workspace.Workspace;
import withers.workspace.WorkspaceLock;
import withers.workspace.WorkspacePaths;
import withers.yaml.Choices;
import withers.yaml.ConfigException;
import withers.yaml.ConfigProblem;
import withers.yaml.Place;

/** Stays up, and does each job of the schedule when it is due. */
@Command(
    name = "schedule",
    mixinStandardHelpOptions = true,
    description = {
      "Stays up, and does the jobs that withers.yaml states under \"schedule\" when they are due.",
      "What was due while it was not up is done once, at its start. One process keeps the schedule",
      "of a workspace, or several do that share a database (schedule-store); while another command writes to it, jobs wait. The signal TERM ends it",
      "within ten seconds, at a point where nothing is half done."
    },
    footerHeading = "%nExample:%n",
    footer = "  withers schedule --workspace coast")
public final class ScheduleCommand implements Callable<Integer> {

  /**
   * Service managers kill what takes longer than they allow; nobody allows less than ten seconds.
   */
  private static final Duration PATIENCE = Duration.ofSeconds(8);

  private final Console console;
  private final Clock clock;
  private final Commands commands;

  @Mixin private WorkspaceOption workspaceOption;

  @Option(
      names = "--json-log",
      description = "Write each line as a JSON object, with job, start, command and run.")
  private boolean isJson;

  @Option(
      names = "--workers",
      description =
          "Share each run with those who run \"withers work\", as reconcile --workers does.")
  private boolean isShared;

  ScheduleCommand(Console console, Clock clock, Commands commands) {
    this.console = console;
    this.clock = clock;
    this.commands = commands;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    List<ScheduledJob> jobs = workspace.settings().schedule();
    requireSome(jobs);
    if (workspace.settings().scheduleStore().isPresent()) {
      keep(workspace, jobs); // beside others: the store says whose turn it is
      return ExitCode.DONE.number();
    }
    try (WorkspaceLock held = workspace.lockSchedule()) {
      keep(workspace, jobs);
      return held.isHeld() ? ExitCode.DONE.number() : ExitCode.STORAGE.number();
    }
  }

  private static void requireSome(List<ScheduledJob> jobs) {
    if (jobs.isEmpty()) {
      throw new ConfigException(
          new ConfigProblem(
              Place.of(WorkspacePaths.SETTINGS),
              "schedule",
              "Expected a job, but found none",
              "state one as \"schedule: {nightly: {cron: 30 2 * * *, actions: [ingest]}}\""));
    }
  }

  private void keep(Workspace workspace, List<ScheduledJob> jobs) {
    Stop stop = new Stop();
    ScheduleLog log = new ScheduleLog(workspace.clock(), isJson, console::print);
    Watch watch = Watch.of(workspace, log);
    JobBooks books = new JobBooks(workspace);
    Optional<JobDatabase> database = books.database();
    JobRunner runner = runner(workspace, books.book(database), log, stop, watch);
    jobs.forEach(job -> tell(job, runner.book(), log));
    Runtime.getRuntime().addShutdownHook(new Thread(() -> stop.ask(PATIENCE), "stop"));
    try (Watch seen = watch.open();
        Timetable waking = Timetable.start(jobs, clock, seen.over(runner), store(database))) {
      log.info(About.NOTHING, "up, process " + ProcessHandle.current().pid());
      waking.until(stop::await);
    }
    log.info(About.NOTHING, "stopped");
    stop.ended();
  }

  private static Map<String, String> store(Optional<JobDatabase> database) {
    return database.map(QuartzStore::in).orElse(Timetable.IN_MEMORY);
  }

  private JobRunner runner(
      Workspace workspace, JobBook book, ScheduleLog log, Stop stop, Watch watch) {
    JobCommands work =
        new JobCommands(
            commands,
            workspace.paths().root().toString(),
            isShared ? List.of("--workers") : List.of(),
            log,
            stop,
            watch.metrics()::took);
    return new JobRunner(
        book,
        clock,
        (job, about, right) -> work.perform(job.actions(), about, right),
        log,
        watch::ended,
        workspace.points());
  }

  private void tell(ScheduledJob job, JobBook book, ScheduleLog log) {
    Instant now = clock.instant();
    log.info(
        About.job(job.name()),
        "%s, next on %s"
            .formatted(
                job.actions().stream().map(Choices::name).collect(Collectors.joining(", ")),
                book.read(job, now)
                    .next(job.times(), now)
                    .map(next -> log.time(next, job.times().zone()))
                    .orElse("no day to come")));
  }
}
