package withers.report.schedule.cli;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import withers.report.mail.OperatorMail;
import withers.report.mail.ReadyMail;
import withers.report.mail.smtp.SmtpCarrier;
import withers.report.schedule.cli.ScheduleLog.About;
import withers.report.send.Answer;
import withers.report.send.Carrier;
import withers.report.send.NoConnectionException;
import withers.schedule.ScheduledJob;
import withers.workspace.MailServer;
import withers.workspace.Workspace;
import withers.yaml.ConfigException;

/**
 * Tells the operator of a job that failed: why, and what to type to try again. It holds what the
 * command said, and so no details of people. One attempt is made: what becomes of it is in the log.
 */
record FailureMail(Workspace workspace, ScheduleLog log) {

  void send(ScheduledJob job, Outcome outcome) {
    Optional<String> to = workspace.settings().watch().operator();
    Optional<MailServer> server = workspace.settings().mail().server();
    if (to.isPresent() && server.isPresent()) {
      send(job, mail(job, outcome, to.get()), server.get());
    }
  }

  private String from() {
    return workspace
        .coordinator()
        .mail()
        .or(() -> workspace.settings().watch().operator())
        .orElseThrow();
  }

  private void send(ScheduledJob job, ReadyMail mail, MailServer server) {
    About about = About.job(job.name());
    try (Carrier carrier = SmtpCarrier.to(server, from(), workspace.paths().root())) {
      carrier.connect();
      Answer answer = carrier.handOver(mail);
      log.info(
          about,
          "the operator's mail was %s"
              .formatted(answer.step().name().toLowerCase(java.util.Locale.ROOT)));
    } catch (NoConnectionException | ConfigException none) {
      log.error(about, "The operator could not be told by mail. " + none.getMessage());
    }
  }

  private ReadyMail mail(ScheduledJob job, Outcome outcome, String to) {
    Instant now = workspace.clock().instant();
    return OperatorMail.of(
        from(),
        to,
        "%s: the job %s failed (%s)"
            .formatted(workspace.settings().network(), job.name(), outcome.name()),
        String.join("\n", text(job, outcome)),
        "job.%s.%d".formatted(job.name(), now.getEpochSecond()),
        now.atZone(workspace.settings().zone()));
  }

  private List<String> text(ScheduledJob job, Outcome outcome) {
    String next =
        job.times()
            .after(workspace.clock().instant())
            .map(time -> log.time(time, job.times().zone()))
            .orElse("no day to come");
    return List.of(
        "The job %s ended with %d (%s): %s"
            .formatted(job.name(), outcome.code(), outcome.name(), outcome.meaning()),
        "",
        "What it said:",
        String.join("\n", outcome.messages().stream().map(line -> "  " + line).toList()),
        "",
        "To try again:",
        "  withers " + String.join(" ", outcome.command()),
        "",
        "By itself it is due next on %s.".formatted(next),
        "");
  }
}
