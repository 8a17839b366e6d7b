package withers.report.mail.smtp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static withers.report.Coast.CLINIC;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import withers.delivery.Delivery.Step;
import withers.report.mail.ReadyMail;
import withers.report.mail.SampleMails;
import withers.report.mail.smtp.FaultyServer.Stage;
import withers.report.send.Answer;
import withers.report.send.NoConnectionException;
import withers.workspace.MailServer;
import withers.workspace.MailServer.Login;
import withers.workspace.MailServer.Security;

/** What the carrier makes of a server's faults (RFC 5321, 4.2.1: 4yz is for now, 5yz for good). */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SmtpCarrierTest {
  private static final String FROM = "post@coast-network.example.org";

  @TempDir private Path folder;
  private final ReadyMail mail = SampleMails.ready().get(CLINIC);
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
  void a_mail_goes_out_byte_for_byte_from_the_coordinator_to_its_reader_alone() {
    Answer answer = handOver();

    assertThat(answer).isEqualTo(Answer.of(Step.ACCEPTED, "250 2.0.0 queued for (address)"));
    assertThat(server.taken())
        .containsExactly(
            new FaultyServer.Taken(
                FROM,
                "post@harbour-vets.example.org",
                new String(mail.content(), StandardCharsets.US_ASCII)));
    assertThat(server.heard().get(0)).isEqualTo("EHLO coast-network.example.org");
  }

  @Test
  void several_mails_go_over_one_connection() {
    try (SmtpCarrier carrier = carrier(noLogin())) {
      for (int i = 0; i < 3; i++) {
        carrier.connect();
        assertThat(carrier.handOver(mail).step()).isEqualTo(Step.ACCEPTED);
      }
    }
    assertThat(server.taken()).hasSize(3);
    assertThat(server.heard()).filteredOn(line -> line.startsWith("EHLO")).hasSize(1);
  }

  @ParameterizedTest
  @CsvSource({
    "MAIL, 421 too busy,            POSTPONED",
    "MAIL, 451 try later,           POSTPONED",
    "MAIL, 550 you may not,         REFUSED",
    "RCPT, 421 too busy,            POSTPONED",
    "RCPT, 450 mailbox is busy,     POSTPONED",
    "RCPT, 550 no such user,        REFUSED",
    "DATA, 421 too busy,            POSTPONED",
    "DATA, 451 try later,           POSTPONED",
    "DATA, 554 no mail today,       REFUSED",
    "DOT,  421 too busy,            POSTPONED",
    "DOT,  450 mailbox is busy,     POSTPONED",
    "DOT,  552 too large,           REFUSED",
    "DOT,  550 content not wanted,  REFUSED"
  })
  void what_a_server_answers_decides(Stage stage, String said, Step step) {
    server.answering(stage, said);

    assertThat(handOver()).isEqualTo(Answer.of(step, said));
    assertThat(server.taken()).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(
      value = Stage.class,
      names = {"MAIL", "RCPT", "DATA"})
  void a_connection_that_ends_before_the_mail_is_whole_leaves_it_unsent(Stage stage) {
    server.answering(stage, FaultyServer.DROP);

    assertThat(handOver())
        .isEqualTo(Answer.lost(Step.POSTPONED, "the connection ended before the mail was given"));
    assertThat(server.taken()).isEmpty();
  }

  /** Larger than what two kernels keep for a connection, so that the end can't have gone out. */
  @Test
  void a_connection_that_ends_within_a_large_mail_leaves_it_unsent() {
    server.answering(Stage.CONTENT, FaultyServer.DROP);

    assertThat(handOver(SampleMails.lines(1 << 20)))
        .isEqualTo(Answer.lost(Step.POSTPONED, "the connection ended before the mail was given"));
  }

  /** All of it was given to the system at once, and how far it came nobody can tell. */
  @Test
  void a_connection_that_ends_within_a_small_mail_leaves_it_unsure() {
    server.answering(Stage.CONTENT, FaultyServer.DROP);

    assertThat(handOver(SampleMails.lines(1)).step()).isEqualTo(Step.UNSURE);
  }

  @ParameterizedTest
  @CsvSource({"drop", "silence", "999 who knows", "354 go on"})
  void without_an_answer_to_the_whole_mail_nobody_knows(String fault) {
    server.answering(Stage.DOT, fault);

    Answer answer = handOver();

    assertThat(answer)
        .isEqualTo(
            Answer.lost(Step.UNSURE, "the connection ended before the server's answer came"));
  }

  @Test
  void after_a_fault_the_next_mail_gets_a_connection_of_its_own() {
    server.answering(Stage.DOT, FaultyServer.DROP).answering(Stage.RCPT, "", "421 too busy");
    try (SmtpCarrier carrier = carrier(noLogin())) {
      for (Step step : new Step[] {Step.UNSURE, Step.POSTPONED, Step.ACCEPTED}) {
        carrier.connect();
        assertThat(carrier.handOver(mail).step()).isEqualTo(step);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "GREETING, 421 too busy,  true,  'to be let in, but it answered: 421 too busy.'",
    "GREETING, 554 go away,   false, 'to be let in, but it answered: 554 go away.'",
    "GREETING, drop,          true,  'an answer, but found none. Look at host and port.'",
    "EHLO,     drop,          true,  'an answer, but found none. Look at host and port.'",
    "AUTH,     535 who?,      false, 'a user and password that it knows, but it answered: 535 who?. Look at user and password-file.'",
    "AUTH,     454 not now,   true,  'a user and password that it knows, but it answered: 454 not now. Look at user and password-file.'"
  })
  void without_a_connection_it_is_told_why_and_whether_waiting_may_help(
      Stage stage, String fault, boolean mayPass, String why) throws IOException {
    server.answering(stage, fault, fault);

    NoConnectionException none = refused(server(Security.NONE, "localhost", true));

    assertThat(none)
        .hasMessage("Expected of the mail server, localhost, port %d, %s", server.port(), why)
        .hasMessageNotContaining("secret");
    assertThat(none.mayPass()).isEqualTo(mayPass);
  }

  @Test
  void a_server_that_is_not_there_may_come_back() throws IOException {
    try (Socket held = new Socket()) { // nobody else may listen where nobody is to
      held.bind(new InetSocketAddress("localhost", 0));
      MailServer away =
          new MailServer(
              "localhost", held.getLocalPort(), Security.NONE, Optional.empty(), Optional.empty());

      NoConnectionException none = refused(away);

      assertThat(none.mayPass()).isTrue();
      assertThat(none).hasMessageEndingWith("an answer, but found none. Look at host and port.");
    }
  }

  @Test
  void nothing_is_said_to_a_server_that_can_not_encrypt() throws IOException {
    NoConnectionException none = refused(server(Security.STARTTLS, "localhost", true));

    assertThat(none)
        .hasMessageEndingWith(
            "encryption, but it offers none. Look at security: starttls, tls or none.");
    assertThat(none.mayPass()).isFalse();
    assertThat(server.heard()).noneMatch(line -> line.startsWith("AUTH"));
  }

  @ParameterizedTest
  @EnumSource(
      value = Security.class,
      names = {"STARTTLS", "TLS"})
  void an_encrypted_connection_is_made_with_a_trusted_certificate_for_that_name(Security security)
      throws Exception {
    use(Certificate.of("localhost", folder), security);

    try (SmtpCarrier carrier = carrier(encrypted(security, "localhost"))) {
      carrier.connect();
      assertThat(carrier.handOver(mail).step()).isEqualTo(Step.ACCEPTED);
    }
    assertThat(server.heard()).anyMatch(line -> line.startsWith("AUTH PLAIN"));
  }

  @ParameterizedTest
  @EnumSource(
      value = Security.class,
      names = {"STARTTLS", "TLS"})
  void a_certificate_for_another_name_or_one_that_nobody_trusts_ends_it(Security security)
      throws Exception {
    Certificate elsewhere = Certificate.of("elsewhere.example.org", folder);
    use(elsewhere, security);
    MailServer trusted = encrypted(security, "elsewhere.example.org");
    MailServer untrusted = server(security, "localhost", true);

    for (MailServer one : new MailServer[] {trusted, untrusted}) {
      NoConnectionException none = refused(one);
      assertThat(none)
          .hasMessageEndingWith(
              "a certificate for that name that is trusted, but the connection could not be"
                  + " protected. Look at host, security and certificates.");
      assertThat(none.mayPass()).isFalse();
    }
    assertThat(server.heard()).noneMatch(line -> line.startsWith("AUTH"));
  }

  private void use(Certificate certificate, Security security) throws Exception {
    server.close();
    server =
        security == Security.TLS
            ? FaultyServer.withTls(certificate.context())
            : FaultyServer.withStartTls(certificate.context());
  }

  private Answer handOver() {
    return handOver(mail);
  }

  private Answer handOver(ReadyMail mail) {
    try (SmtpCarrier carrier = carrier(noLogin())) {
      carrier.connect();
      return carrier.handOver(mail);
    }
  }

  private NoConnectionException refused(MailServer wanted) throws IOException {
    try (SmtpCarrier carrier = carrier(wanted)) {
      return catchThrowableOfType(NoConnectionException.class, carrier::connect);
    }
  }

  private SmtpCarrier carrier(MailServer wanted) {
    return SmtpCarrier.to(wanted, FROM, folder, Duration.ofSeconds(3));
  }

  private MailServer noLogin() {
    return new MailServer(
        "localhost", server.port(), Security.NONE, Optional.empty(), Optional.empty());
  }

  /** Trusts what the certificate of that name vouches for. */
  private MailServer encrypted(Security security, String name) throws IOException {
    MailServer plain = server(security, "localhost", true);
    return new MailServer(
        plain.host(), plain.port(), security, plain.login(), Optional.of(name + ".pem"));
  }

  private MailServer server(Security security, String host, boolean withLogin) throws IOException {
    Path password = folder.resolve("mail.password");
    Files.writeString(password, "secret\n");
    Files.setPosixFilePermissions(password, PosixFilePermissions.fromString("rw-------"));
    Optional<Login> login =
        withLogin ? Optional.of(new Login("lists", "mail.password")) : Optional.empty();
    return new MailServer(host, server.port(), security, login, Optional.empty());
  }
}
