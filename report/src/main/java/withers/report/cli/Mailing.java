package withers.report.cli;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.delivery.Delivery;
import withers.delivery.Delivery.Step;
import withers.id.ImportId;
import withers.id.OrganisationId;
import withers.log.EventLog;
import withers.point.Point;
import withers.report.mail.Mails;
import withers.report.mail.smtp.SmtpCarrier;
import withers.report.publish.Published;
import withers.report.send.Carrier;
import withers.report.send.DeliveryBook;
import withers.report.send.Pause;
import withers.report.send.Planned;
import withers.report.send.Sender;
import withers.report.send.Sent;
import withers.workspace.MailServer;
import withers.workspace.Workspace;
import withers.workspace.WorkspacePaths;
import withers.yaml.ConfigException;
import withers.yaml.ConfigProblem;
import withers.yaml.Place;

/**
 * Offers the mails of a run, and sends them. The workspace is locked while either is done, and not
 * while somebody makes up their mind.
 *
 * @param isJson whether standard output is for JSON alone
 */
record Mailing(Workspace workspace, Console console, Pause pause, boolean isJson) {

  /** What was made, and which of its mails are due. */
  record Offer(Published published, List<Planned> plan, Carrier carrier) {
    List<Planned> due() {
      return plan.stream().filter(planned -> planned.due().isDue()).toList();
    }
  }

  /**
   * Publishes a run and finds out which mails are due. Nothing is sent.
   *
   * @throws ConfigException when there is no server, or its password can't be taken
   */
  Offer offer(Optional<String> run) {
    Carrier carrier = carrier();
    Reporter reporter = new Reporter(workspace);
    return workspace.whileLocked(
        "report",
        () -> {
          Published published = reporter.publish(reporter.run(run));
          return new Offer(published, withBook(book -> plan(published, book)), carrier);
        });
  }

  private List<Planned> plan(Published published, DeliveryBook book) {
    book.closeUnanswered();
    LocalDate today = book.today();
    int interval = workspace.settings().mail().reminderDays();
    return Planned.of(published, book.mailings(), today, interval);
  }

  /** Shows who would get what: counts, no details. */
  void show(Offer offer) {
    MailingText text = new MailingText(this::line);
    text.plan(offer.plan());
  }

  /** Sends what is due, as far as it still is. */
  ExitCode send(Offer offer) {
    workspace.points().reached(Point.SEND_OFFERED);
    Set<OrganisationId> offered =
        offer.due().stream().map(Planned::recipient).collect(Collectors.toSet());
    Sent sent =
        workspace.whileLocked(
            "report",
            () ->
                withBook(
                    book -> {
                      List<Planned> due =
                          plan(offer.published(), book).stream()
                              .filter(one -> one.due().isDue())
                              .filter(one -> offered.contains(one.recipient()))
                              .toList();
                      try (Carrier carrier = new BrakedCarrier(offer.carrier(), console.brake())) {
                        return new Sender(carrier, book, pause, workspace.points()).send(due);
                      }
                    }));
    new MailingText(this::line).sent(sent);
    sent.trouble().ifPresent(console::say);
    ExitCode unsure = leave();
    return sent.isAll() ? unsure : ExitCode.NOT_SENT;
  }

  /** Says of which mails nobody knows whether they arrived. */
  ExitCode leave() {
    List<Delivery> unsure =
        withBook(book -> book.mailings().unsure()).stream()
            .filter(one -> one.step() == Step.UNSURE) // another may be under way just now
            .toList();
    unsure.forEach(one -> console.say(MailingText.unsure(one)));
    return unsure.isEmpty() ? ExitCode.DONE : ExitCode.NOT_SENT;
  }

  /** Does something with what was sent so far. */
  <T> T withBook(Function<DeliveryBook, T> work) {
    try (EventLog log = workspace.openLog()) {
      return work.apply(
          new DeliveryBook(log, workspace.clock(), () -> new ImportId(UUID.randomUUID())));
    }
  }

  private void line(String line) {
    if (isJson) {
      console.say(line);
    } else {
      console.print(line);
    }
  }

  static String mails(int number) {
    return number == 1 ? "1 mail" : "%,d mails".formatted(number);
  }

  private Carrier carrier() {
    MailServer server =
        workspace
            .settings()
            .mail()
            .server()
            .orElseThrow(
                () ->
                    missing(
                        WorkspacePaths.SETTINGS,
                        "mail",
                        "a server to send mail through",
                        "state it as \"mail: {server: {host: ...}}\""));
    String from =
        workspace
            .coordinator()
            .mail()
            .filter(address -> Mails.canMail(workspace.coordinator()))
            .orElseThrow(
                () ->
                    missing(
                        WorkspacePaths.ORGANISATIONS,
                        "mail",
                        "a mail address of the coordinator, to write from",
                        "give its entry a \"mail\""));
    return SmtpCarrier.to(server, from, workspace.paths().root());
  }

  private static ConfigException missing(String file, String key, String expected, String advice) {
    return new ConfigException(
        new ConfigProblem(
            Place.of(file), key, "Expected %s, but found none".formatted(expected), advice));
  }
}
