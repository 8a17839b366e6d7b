package withers.report.mail.smtp;

import jakarta.mail.Address;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.URLName;
import jakarta.mail.internet.InternetAddress;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import javax.net.ssl.SSLSocketFactory;
import org.eclipse.angus.mail.smtp.SMTPTransport;
import withers.delivery.Delivery.Step;
import withers.report.mail.ReadyMail;
import withers.report.send.Answer;
import withers.report.send.Carrier;
import withers.workspace.MailServer;
import withers.workspace.MailServer.Login;
import withers.workspace.PasswordFile;

/** Hands mails over to a server by SMTP, all over one connection while it lasts. */
public final class SmtpCarrier implements Carrier {

  /** The longest that a client should wait for an answer (RFC 5321, 4.5.3.2.6). */
  private static final Duration PATIENCE = Duration.ofMinutes(10);

  private final MailServer server;
  private final Optional<String> password;
  private final Session session;
  private final SMTPTransport transport;

  private SmtpCarrier(MailServer server, Optional<String> password, Session session) {
    this.server = server;
    this.password = password;
    this.session = session;
    this.transport =
        new SMTPTransport(session, new URLName("smtp", server.host(), -1, null, null, null));
  }

  /**
   * A carrier; it connects when it is asked to.
   *
   * @param from the address that answers to failures go to
   * @param folder where relative names of files begin
   * @throws withers.yaml.ConfigException when others can read the password's file, or a file that
   *     is named can't be used
   */
  public static SmtpCarrier to(MailServer server, String from, Path folder) {
    return to(server, from, folder, PATIENCE);
  }

  static SmtpCarrier to(MailServer server, String from, Path folder, Duration patience) {
    Optional<String> password =
        server.login().map(login -> PasswordFile.read(folder.resolve(login.passwordFile())));
    Optional<SSLSocketFactory> trust =
        server.certificates().map(file -> TrustedCertificates.in(folder.resolve(file)));
    return new SmtpCarrier(server, password, SmtpSession.of(server, from, trust, patience));
  }

  @Override
  public void connect() {
    if (transport.isConnected()) {
      return;
    }
    try {
      close();
      transport.connect(
          server.host(),
          server.port(),
          server.login().map(Login::user).orElse(null),
          password.orElse(null));
    } catch (MessagingException failed) {
      throw new ConnectionTrouble(server, transport.getLastReturnCode(), said()).asOf(failed);
    }
  }

  @Override
  public Answer handOver(ReadyMail mail) {
    RawMessage message = new RawMessage(session, mail.content());
    try {
      transport.sendMessage(message, new Address[] {new InternetAddress(mail.to())});
      return Answer.of(Step.ACCEPTED, said());
    } catch (MessagingException failed) {
      return message.isOut() ? afterTheEnd() : beforeTheEnd();
    }
  }

  /** Only an answer tells what became of a mail that is out whole. */
  private Answer afterTheEnd() {
    return refusal()
        .orElseGet(
            () -> Answer.lost(Step.UNSURE, "the connection ended before the server's answer came"));
  }

  /** Without its end the server must not deliver a mail (RFC 5321, 4.1.1.4). */
  private Answer beforeTheEnd() {
    return refusal()
        .orElseGet(
            () -> Answer.lost(Step.POSTPONED, "the connection ended before the mail was given"));
  }

  private Optional<Answer> refusal() {
    return switch (transport.getLastReturnCode() / 100) {
      case 4 -> Optional.of(Answer.of(Step.POSTPONED, said()));
      case 5 -> Optional.of(Answer.of(Step.REFUSED, said()));
      default -> Optional.empty();
    };
  }

  private String said() {
    String last = transport.getLastServerResponse();
    return last == null ? "" : ServerWords.of(last);
  }

  @Override
  public void close() {
    try {
      transport.close();
    } catch (MessagingException closing) {
      // It is closed all the same, and what was to be said has been.
      return;
    }
  }
}
