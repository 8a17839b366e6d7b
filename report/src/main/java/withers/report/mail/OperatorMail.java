package withers.report.mail;

import jakarta.mail.Message.RecipientType;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import withers.report.text.OneLine;

/** A mail in plain text to whoever looks after the machine. */
public final class OperatorMail {
  private static final DateTimeFormatter DATE = // RFC 5322, 3.3
      DateTimeFormatter.ofPattern("EEE, d MMM uuuu HH:mm:ss Z", Locale.ENGLISH);

  private OperatorMail() {}

  /**
   * The mail, ready to be handed over.
   *
   * @param id what it is about, the same for the same: letters, digits, dots and dashes
   * @throws IllegalArgumentException when one of the addresses is none that mail can be sent to
   */
  public static ReadyMail of(
      String from, String to, String subject, String text, String id, ZonedDateTime written) {
    MailAddress sender = new MailAddress(from);
    MailAddress reader = new MailAddress(to);
    try {
      MimeMessage message = new NamedMessage("<withers.%s@%s>".formatted(id, sender.domain()));
      message.setFrom(new InternetAddress(sender.value()));
      message.setRecipient(RecipientType.TO, new InternetAddress(reader.value()));
      message.setSubject(HeaderText.of(OneLine.of(subject)), StandardCharsets.UTF_8.name());
      message.setHeader("Date", DATE.format(written));
      message.setHeader("Auto-Submitted", "auto-generated"); // RFC 3834
      message.setText(text, StandardCharsets.UTF_8.name());
      message.setHeader("Content-Transfer-Encoding", "quoted-printable");
      message.saveChanges();
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      message.writeTo(bytes);
      return new ReadyMail(reader, true, bytes.toByteArray());
    } catch (MessagingException e) {
      throw new IllegalStateException("The mail can't be composed", e);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
