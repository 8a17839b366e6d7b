package withers.report.mail.smtp;

import jakarta.mail.AuthenticationFailedException;
import jakarta.mail.MessagingException;
import java.io.IOException;
import javax.net.ssl.SSLException;
import withers.report.send.NoConnectionException;
import withers.workspace.MailServer;

/**
 * Says why there is no connection, and whether waiting may help.
 *
 * @param code of the server's last answer; below 100 when it gave none
 * @param said that answer
 */
record ConnectionTrouble(MailServer server, int code, String said) {

  NoConnectionException asOf(MessagingException failed) {
    if (failed instanceof AuthenticationFailedException) {
      return trouble(
          "a user and password that it knows, but it answered: " + said,
          "Look at user and password-file.",
          isTemporary(),
          failed);
    }
    if (hasCause(failed, SSLException.class)) {
      return trouble(
          "a certificate for that name that is trusted, but the connection could not be protected",
          "Look at host, security and certificates.",
          false,
          failed);
    }
    if (code >= 400) {
      return trouble("to be let in, but it answered: " + said, "", isTemporary(), failed);
    }
    if (hasCause(failed, IOException.class) || code < 200) {
      return trouble("an answer, but found none", "Look at host and port.", true, failed);
    }
    return trouble(
        "encryption, but it offers none",
        "Look at security: starttls, tls or none.",
        false,
        failed);
  }

  private boolean isTemporary() {
    return code >= 400 && code < 500;
  }

  private NoConnectionException trouble(
      String expected, String advice, boolean mayPass, MessagingException cause) {
    String message =
        "Expected of the mail server, %s, port %d, %s. %s"
            .formatted(server.host(), server.port(), expected, advice);
    return new NoConnectionException(message.strip(), mayPass, cause);
  }

  private static boolean hasCause(Throwable failed, Class<? extends Throwable> type) {
    for (Throwable one = failed; one != null; one = one.getCause()) {
      if (type.isInstance(one)) {
        return true;
      }
    }
    return false;
  }
}
