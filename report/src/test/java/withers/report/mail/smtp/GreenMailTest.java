package withers.report.mail.smtp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static withers.report.Coast.CLINIC;

import com.icegreen.greenmail.user.GreenMailUser;
import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Optional;
import org.apache.james.mime4j.codec.DecodeMonitor;
import org.apache.james.mime4j.dom.Message;
import org.apache.james.mime4j.dom.Multipart;
import org.apache.james.mime4j.message.DefaultMessageBuilder;
import org.apache.james.mime4j.stream.MimeConfig;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.delivery.Delivery.Step;
import withers.report.mail.ReadyMail;
import withers.report.mail.SampleMails;
import withers.report.send.NoConnectionException;
import withers.workspace.MailServer;
import withers.workspace.MailServer.Login;
import withers.workspace.MailServer.Security;

/** GreenMail 2.1.5 as a mail server over TLS with a sign-in, and what it hands out again. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class GreenMailTest {
  private static final String USER = "lists@coast-network.example.org";
  private static final String PASSWORD = "five wörds nobody guesses";

  @TempDir static Path folder;
  private static GreenMail server;
  private static GreenMailUser reader;

  /** GreenMail reads where its keys are from properties, once in a JVM. */
  @BeforeAll
  static void start() throws Exception {
    Certificate certificate = Certificate.of("localhost", folder);
    System.setProperty("greenmail.tls.keystore.file", certificate.store().toString());
    System.setProperty("greenmail.tls.keystore.password", Certificate.PASSWORD);
    server = new GreenMail(new ServerSetup(0, "localhost", ServerSetup.PROTOCOL_SMTPS));
    server.start();
    server.setUser(USER, USER, PASSWORD);
    reader = server.setUser("post@harbour-vets.example.org", "harbour", "unused");
  }

  @AfterAll
  static void stop() {
    server.stop();
    System.clearProperty("greenmail.tls.keystore.file");
    System.clearProperty("greenmail.tls.keystore.password");
  }

  @BeforeEach
  void empties_the_mailboxes() throws Exception {
    server.purgeEmailFromAllMailboxes();
  }

  @Test
  void a_mail_arrives_as_it_was_made_and_an_independent_parser_reads_it() throws Exception {
    ReadyMail mail = SampleMails.ready().get(CLINIC);

    try (SmtpCarrier carrier = carrier(PASSWORD)) {
      carrier.connect();
      assertThat(carrier.handOver(mail).step()).isEqualTo(Step.ACCEPTED);
    }

    MimeMessage[] received = server.getReceivedMessages();
    assertThat(received).hasSize(1);
    byte[] raw = bytes(received[0]);
    assertThat(text(raw).endsWith(text(mail.content()))).as("unchanged").isTrue();
    Message parsed = parsed(raw);
    assertThat(parsed.getMessageId())
        .isEqualTo("<withers.2026-03-01-0123abcd.harbour-vets@coast-network.example.org>");
    assertThat(((Multipart) parsed.getBody()).getCount()).isEqualTo(2);
    assertThat(reader.getEmail()).isEqualTo("post@harbour-vets.example.org");
  }

  @Test
  void a_wrong_password_is_told_as_such_and_nothing_goes_out() throws Exception {
    try (SmtpCarrier carrier = carrier("a guess")) {
      assertThatThrownBy(carrier::connect)
          .isInstanceOf(NoConnectionException.class)
          .hasMessageContaining("a user and password that it knows, but it answered: 535")
          .hasMessageNotContaining("a guess");
    }
    assertThat(server.getReceivedMessages()).isEmpty();
  }

  private static SmtpCarrier carrier(String password) throws IOException {
    Path file = folder.resolve("mail.password");
    Files.writeString(file, password + "\n");
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
    MailServer settings =
        new MailServer(
            "localhost",
            server.getSmtps().getPort(),
            Security.TLS,
            Optional.of(new Login(USER, "mail.password")),
            Optional.of("localhost.pem"));
    return SmtpCarrier.to(settings, "post@coast-network.example.org", folder);
  }

  /** Without the line ends after the end, which are no part of it. */
  private static String text(byte[] mail) {
    return new String(mail, StandardCharsets.US_ASCII).stripTrailing();
  }

  private static byte[] bytes(MimeMessage message) throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    message.writeTo(bytes);
    return bytes.toByteArray();
  }

  private static Message parsed(byte[] mail) throws Exception {
    DefaultMessageBuilder builder = new DefaultMessageBuilder();
    builder.setMimeEntityConfig(MimeConfig.STRICT);
    builder.setDecodeMonitor(DecodeMonitor.STRICT);
    return builder.parseMessage(new ByteArrayInputStream(mail));
  }
}
