package withers.report.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import withers.delivery.Delivery;
import withers.delivery.Delivery.Step;
import withers.id.ImportId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.report.mail.smtp.SmtpCarrier;
import withers.report.publish.Published;
import withers.report.send.Carrier;
import withers.report.send.DeliveryBook;
import withers.report.send.Planned;
import withers.report.send.Sender;
import withers.workspace.Workspace;

/**
 * A program that sends as the command does, and waits to be killed when a mail was accepted and
 * that is about to be written down.
 */
final class StoppingBeforeTheRecord {
  static final String ACCEPTED = "accepted: ";

  private StoppingBeforeTheRecord() {}

  public static void main(String... args) {
    Instant now = CommandRun.hour(LocalDate.parse(args[1]));
    Workspace workspace = Workspace.open(Path.of(args[0]), Clock.fixed(now, ZoneOffset.UTC));
    workspace.whileLocked("report", () -> send(workspace));
  }

  private static Object send(Workspace workspace) {
    Reporter reporter = new Reporter(workspace);
    Published published = reporter.publish(reporter.run(Optional.empty()));
    try (EventLog log = new Stopping(workspace.openLog());
        Carrier carrier =
            SmtpCarrier.to(
                workspace.settings().mail().server().orElseThrow(),
                workspace.coordinator().mail().orElseThrow(),
                workspace.paths().root())) {
      DeliveryBook book =
          new DeliveryBook(log, workspace.clock(), () -> new ImportId(UUID.randomUUID()));
      return new Sender(carrier, book, time -> {})
          .send(due(published, book, workspace.settings().mail().reminderDays()));
    }
  }

  private static List<Planned> due(Published published, DeliveryBook book, int interval) {
    return Planned.of(published, book.mailings(), book.today(), interval).stream()
        .filter(planned -> planned.due().isDue())
        .toList();
  }

  /** A log that never comes to write of an acceptance. */
  private record Stopping(EventLog log) implements EventLog {
    @Override
    public <E> void append(Batch<E> batch) {
      if (batch.events().get(0) instanceof Delivery step && step.step() == Step.ACCEPTED) {
        System.out.println(ACCEPTED + step.recipient());
        waitToBeKilled();
      }
      log.append(batch);
    }

    private static void waitToBeKilled() {
      try {
        while (System.in.read() >= 0) {
          // Nobody writes: this ends with the process.
        }
      } catch (IOException closed) {
        throw new UncheckedIOException(closed);
      }
    }

    @Override
    public void commit(ImportMarker marker) {
      log.commit(marker);
    }

    @Override
    public LogSnapshot snapshot() {
      return log.snapshot();
    }

    @Override
    public long sweep() {
      return log.sweep();
    }

    @Override
    public void close() {
      log.close();
    }
  }
}
