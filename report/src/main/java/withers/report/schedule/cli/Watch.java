package withers.report.schedule.cli;

import java.util.Optional;
import withers.report.schedule.Alarm;
import withers.report.schedule.cli.ScheduleLog.About;
import withers.report.watch.Metrics;
import withers.report.watch.Pulse;
import withers.report.watch.Standing;
import withers.report.watch.WatchServer;
import withers.schedule.Action;
import withers.schedule.ScheduledJob;
import withers.workspace.WatchSettings;
import withers.workspace.Workspace;

/** Lets a schedule be seen from outside, and has the operator told of what fails. */
final class Watch implements AutoCloseable {
  private final Workspace workspace;
  private final ScheduleLog log;
  private final Metrics metrics;
  private final Pulse pulse;
  private Optional<WatchServer> server = Optional.empty();

  private Watch(Workspace workspace, ScheduleLog log) {
    this.workspace = workspace;
    this.log = log;
    this.metrics = new Metrics(new Standings(workspace).read());
    this.pulse = new Pulse(workspace.clock());
  }

  /** It answers nobody before {@link #open}. */
  static Watch of(Workspace workspace, ScheduleLog log) {
    return new Watch(workspace, log);
  }

  /** Answers whoever asks at the port that the settings state, if they do. */
  Watch open() {
    WatchSettings settings = workspace.settings().watch();
    server =
        settings.port().map(port -> WatchServer.start(settings.address(), port, pulse, metrics));
    server.ifPresent(
        up ->
            log.info(
                About.NOTHING, "seen at %s, port %d".formatted(settings.address(), up.port())));
    return this;
  }

  Metrics metrics() {
    return metrics;
  }

  /** The alarm, whose wakes are the pulse. */
  Alarm over(Alarm alarm) {
    return job -> {
      pulse.begins();
      try {
        return alarm.wake(job);
      } finally {
        pulse.beats();
      }
    };
  }

  /** A start of a job has ended. */
  void ended(ScheduledJob job, Outcome outcome) {
    if (outcome.isFailure()) {
      new FailureMail(workspace, log).send(job, outcome);
    }
    Standing standing = new Standings(workspace).read();
    metrics.set(standing);
    if (job.actions().contains(Action.RECONCILE)) {
      standing
          .run()
          .ifPresent(
              run ->
                  log.info(
                      About.job(job.name()).ended(run.id(), outcome.code()),
                      "the latest run is " + run.id()));
    }
  }

  @Override
  public void close() {
    server.ifPresent(WatchServer::close);
  }
}
