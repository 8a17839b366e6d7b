package withers.report.send;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.Coast.BEACON;
import static withers.report.Coast.CLINIC;
import static withers.report.Coast.SHELTER;
import static withers.report.Coast.TIDELINE;
import static withers.report.mail.smtp.FaultyServer.AS_USUAL;
import static withers.report.mail.smtp.FaultyServer.DROP;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.codec.Streams;
import withers.delivery.Delivery;
import withers.delivery.Delivery.Step;
import withers.id.ImportId;
import withers.id.OrganisationId;
import withers.log.EventLog;
import withers.log.memory.MemoryEventLog;
import withers.mailing.Due;
import withers.report.Coast;
import withers.report.Samples;
import withers.report.list.FollowUpList;
import withers.report.list.Listed;
import withers.report.mail.ReadyMail;
import withers.report.mail.SampleMails;
import withers.report.mail.smtp.FaultyServer;
import withers.report.mail.smtp.FaultyServer.Stage;
import withers.report.mail.smtp.SmtpCarrier;
import withers.report.text.Texts;
import withers.workspace.MailServer;
import withers.workspace.MailServer.Security;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SenderTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-01T06:30:00Z"), ZoneOffset.UTC);
  private static final String CLINIC_POST = "post@harbour-vets.example.org";
  private static final String SHELTER_POST = "post@dune-shelter.example.org";

  private final EventLog log = new MemoryEventLog();
  private final AtomicLong ids = new AtomicLong();
  private final DeliveryBook book =
      new DeliveryBook(log, CLOCK, () -> new ImportId(new UUID(0, ids.incrementAndGet())));
  private final List<Duration> waited = new ArrayList<>();
  private FaultyServer server;

  @BeforeEach
  void starts_a_server() throws IOException {
    server = FaultyServer.plain();
  }

  @AfterEach
  void stops_it() throws IOException {
    server.close();
  }

  @Test
  void every_mail_is_pending_before_it_is_given_and_accepted_after() {
    List<Step> before = new ArrayList<>();
    server.atTheEnd(() -> before.addAll(steps()));

    Sent sent = send();

    assertThat(before).containsExactly(Step.PENDING, Step.PENDING, Step.ACCEPTED, Step.PENDING);
    assertThat(sent.isAll()).isTrue();
    assertThat(sent.steps()).map(Delivery::recipient).containsExactly(SHELTER, CLINIC);
    assertThat(waited).containsExactly(Duration.ZERO);
    assertThat(log.snapshot().markers()).hasSize(4);
  }

  @Test
  void what_one_recipient_s_server_refuses_stops_no_other() {
    server.answering(SHELTER_POST, Stage.RCPT, "550 no such user <" + SHELTER_POST + ">");

    Sent sent = send();

    assertThat(sent.steps())
        .map(step -> step.recipient() + " " + step.step() + " " + step.words())
        .containsExactly(
            "dune-shelter REFUSED 550 no such user (address)",
            "harbour-vets ACCEPTED 250 2.0.0 queued for (address)");
    assertThat(sent.isAll()).isFalse();
    assertThat(waited).containsExactly(Duration.ZERO);
  }

  @Test
  void what_can_not_be_taken_now_has_two_more_turns_after_the_others() {
    server.answering(SHELTER_POST, Stage.RCPT, "450 busy", "450 still busy");

    Sent sent = send();

    assertThat(sent.isAll()).isTrue();
    assertThat(waited).containsExactly(Duration.ZERO, Duration.ofMinutes(1), Duration.ofMinutes(5));
    assertThat(server.taken())
        .map(FaultyServer.Taken::to)
        .containsExactly(CLINIC_POST, SHELTER_POST);
    assertThat(steps())
        .containsExactly(
            Step.PENDING,
            Step.POSTPONED,
            Step.PENDING,
            Step.ACCEPTED,
            Step.PENDING,
            Step.POSTPONED,
            Step.PENDING,
            Step.ACCEPTED);
  }

  @Test
  void after_that_it_is_left_for_another_time() {
    server.answering(SHELTER_POST, Stage.RCPT, "450 busy", "421 closing", "450 busy");

    Sent sent = send();

    assertThat(sent.steps()).map(Delivery::step).containsExactly(Step.POSTPONED, Step.ACCEPTED);
    assertThat(waited).hasSize(3);
    assertThat(book.mailings().unsure()).isEmpty();
  }

  @Test
  void a_mail_whose_answer_was_lost_is_not_given_again() {
    server.answering(SHELTER_POST, Stage.DOT, DROP);

    Sent sent = send();

    assertThat(sent.steps()).map(Delivery::step).containsExactly(Step.UNSURE, Step.ACCEPTED);
    assertThat(server.taken()).hasSize(2);
    assertThat(waited).containsExactly(Duration.ZERO);
  }

  @Test
  void a_server_that_loses_one_mail_after_another_is_left_alone_for_a_while() {
    List<Planned> four = Stream.concat(plan().stream(), others().stream()).toList();
    server.answering(Stage.DOT, DROP, DROP);

    Sent sent = send(four);

    assertThat(sent.steps())
        .map(Delivery::step)
        .containsExactly(Step.UNSURE, Step.UNSURE, Step.ACCEPTED, Step.ACCEPTED);
    assertThat(waited).containsExactly(Duration.ZERO, Duration.ofMinutes(1));
    assertThat(server.taken()).hasSize(4);
  }

  @Test
  void a_server_that_does_not_answer_is_waited_for_and_nothing_is_pending_meanwhile() {
    server.answering(Stage.GREETING, DROP, DROP, AS_USUAL);

    Sent sent = send();

    assertThat(sent.isAll()).isTrue();
    assertThat(waited).hasSize(3);
    assertThat(steps()).hasSize(4);
  }

  @Test
  void a_server_that_stays_away_leaves_all_untried() throws IOException {
    server.close();

    Sent sent = send();

    assertThat(sent.untried()).containsExactly(SHELTER, CLINIC);
    assertThat(sent.isAll()).isFalse();
    assertThat(sent.trouble()).hasValueSatisfying(why -> assertThat(why).contains("localhost"));
    assertThat(waited).hasSize(3);
    assertThat(steps()).isEmpty();
  }

  @Test
  void a_server_that_will_never_let_us_in_is_not_asked_again() {
    server.answering(Stage.GREETING, "554 go away", "554 go away");

    Sent sent = send();

    assertThat(sent.untried()).hasSize(2);
    assertThat(waited).containsExactly(Duration.ZERO);
  }

  @Test
  void mails_without_an_answer_of_a_program_that_was_ended_are_called_unsure_once() {
    Delivery pending = plan().get(0).pending(book.today());
    book.write(pending);

    List<Delivery> unsure = book.closeUnanswered();

    assertThat(unsure)
        .containsExactly(
            pending.then(
                Step.UNSURE, book.today(), "the program was ended before the answer was written"));
    assertThat(book.closeUnanswered()).isEmpty();
    assertThat(steps()).containsExactly(Step.PENDING, Step.UNSURE);
  }

  private Sent send() {
    return send(plan());
  }

  private Sent send(List<Planned> mails) {
    MailServer local =
        new MailServer(
            "localhost", server.port(), Security.NONE, Optional.empty(), Optional.empty());
    try (Carrier carrier = SmtpCarrier.to(local, "post@coast-network.example.org", Path.of("."))) {
      return new Sender(carrier, book, waited::add).send(mails);
    }
  }

  private static List<Planned> plan() {
    SortedMap<OrganisationId, ReadyMail> mails = SampleMails.ready();
    List<FollowUpList> lists = new Samples().lists(Texts.in(Locale.UK));
    return lists.stream()
        .map(FollowUpList::listed)
        .map(list -> new Planned(list, mails.get(list.organisation().id()), new Due.First()))
        .toList();
  }

  /** Two more recipients. */
  private static List<Planned> others() {
    Planned one = plan().get(0);
    return Stream.of(TIDELINE, BEACON)
        .map(id -> Coast.DIRECTORY.find(id).orElseThrow())
        .map(
            reader ->
                new Listed(
                    reader,
                    one.list().run(),
                    one.list().asOf(),
                    one.list().size(),
                    one.list().fresh(),
                    one.list().settled(),
                    one.list().settledByPeople(),
                    one.list().backlogWaiting(),
                    one.list().told()))
        .map(list -> new Planned(list, one.mail(), one.due()))
        .toList();
  }

  private List<Step> steps() {
    List<Step> steps = new ArrayList<>();
    log.snapshot()
        .<Delivery>replay(Streams.DELIVERIES, 0, (step, marker) -> steps.add(step.step()));
    return steps;
  }
}
