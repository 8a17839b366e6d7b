package withers.report.mail;

import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import java.util.Properties;

/** A message that keeps the id that it was given. */
final class NamedMessage extends MimeMessage {
  private final String id;

  NamedMessage(String id) {
    super(Session.getInstance(new Properties()));
    this.id = id;
  }

  @Override
  protected void updateMessageID() throws MessagingException {
    setHeader("Message-ID", id);
  }
}
