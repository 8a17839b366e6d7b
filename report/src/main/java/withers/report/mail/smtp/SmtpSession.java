package withers.report.mail.smtp;

import jakarta.mail.Session;
import java.time.Duration;
import java.util.Optional;
import java.util.Properties;
import javax.net.ssl.SSLSocketFactory;
import withers.workspace.MailServer;
import withers.workspace.MailServer.Security;

/** What the mail library is told of a server. */
final class SmtpSession {

  /** Ours; a server that is there answers within seconds. */
  private static final Duration CONNECTING = Duration.ofSeconds(30);

  private static final String PREFIX = "mail.smtp.";

  private SmtpSession() {}

  /**
   * A session.
   *
   * @param from the envelope's sender
   * @param trust makes sockets that trust other certificates than Java does
   * @param patience how long an answer is waited for
   */
  static Session of(
      MailServer server, String from, Optional<SSLSocketFactory> trust, Duration patience) {
    Properties properties = new Properties();
    set(properties, "from", from);
    set(properties, "localhost", from.substring(from.indexOf('@') + 1));
    set(properties, "connectiontimeout", CONNECTING.toMillis());
    set(properties, "timeout", patience.toMillis());
    set(properties, "writetimeout", patience.toMillis());
    set(properties, "quitwait", false);
    set(properties, "auth", server.login().isPresent());
    set(properties, "auth.mechanisms", "PLAIN LOGIN");
    set(properties, "ssl.enable", server.security() == Security.TLS);
    set(properties, "ssl.checkserveridentity", true);
    set(properties, "starttls.enable", server.security() == Security.STARTTLS);
    set(properties, "starttls.required", server.security() == Security.STARTTLS);
    trust.ifPresent(factory -> properties.put(PREFIX + "ssl.socketFactory", factory));
    return Session.getInstance(properties);
  }

  private static void set(Properties properties, String key, Object value) {
    properties.setProperty(PREFIX + key, value.toString());
  }
}
