package withers.report.mail;

import jakarta.activation.DataHandler;
import jakarta.mail.Message.RecipientType;
import jakarta.mail.MessagingException;
import jakarta.mail.Part;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeBodyPart;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimePart;
import jakarta.mail.util.ByteArrayDataSource;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.UnsupportedEncodingException;
import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.UUID;
import withers.report.mail.Letter.Page;

/**
 * Puts letters into the form of mail (RFC 5322, RFC 2045 to 2047; RFC 2387 and 2392 for pictures on
 * a page).
 */
final class Composer {
  private static final DateTimeFormatter DATE = // RFC 5322, 3.3
      DateTimeFormatter.ofPattern("EEE, d MMM uuuu HH:mm:ss Z", Locale.ENGLISH);

  private final Envelope envelope;
  private final String language;

  Composer(Envelope envelope, String language) {
    this.envelope = envelope;
    this.language = language;
  }

  /** The message, lines ended by CR LF. */
  byte[] bytes(Letter letter, MailAddress to) {
    try {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      message(letter, to).writeTo(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (MessagingException e) {
      throw new IllegalStateException("The mail can't be composed", e);
    }
  }

  /** The same for the same run and recipient, however often the mail is made. */
  private String id(Letter letter) {
    return "<withers.%s.%s@%s>".formatted(letter.run(), letter.to().id(), envelope.from().domain());
  }

  private MimeMessage message(Letter letter, MailAddress to)
      throws MessagingException, UnsupportedEncodingException {
    MimeMessage message = new NamedMessage(id(letter));
    message.setFrom(address(envelope.from(), envelope.network()));
    message.setRecipient(RecipientType.TO, address(to, letter.to().name()));
    message.setSubject(HeaderText.of(letter.subject()), StandardCharsets.UTF_8.name());
    message.setHeader("Date", DATE.format(envelope.written()));
    message.setHeader("Auto-Submitted", "auto-generated"); // RFC 3834
    message.setHeader("Content-Language", language);
    if (letter.page().isPresent()) {
      message.setContent(body(letter, letter.page().get()));
    } else {
      fill(message, letter.text(), "plain");
    }
    message.saveChanges();
    return message;
  }

  private static InternetAddress address(MailAddress address, String name)
      throws UnsupportedEncodingException {
    return new InternetAddress(address.value(), HeaderText.of(name), StandardCharsets.UTF_8.name());
  }

  private StableMultipart body(Letter letter, Page page) throws MessagingException {
    String mark = boundary(letter);
    StableMultipart words = new StableMultipart("alternative", mark + ".words");
    words.addBodyPart(text(letter.text(), "plain"));
    words.addBodyPart(page.pictures().isEmpty() ? text(page.html(), "html") : shown(page, mark));
    StableMultipart all = new StableMultipart("mixed", mark);
    all.addBodyPart(holding(words));
    for (Enclosure enclosure : letter.enclosures()) {
      all.addBodyPart(file(enclosure));
    }
    return all;
  }

  private static MimeBodyPart shown(Page page, String mark) throws MessagingException {
    StableMultipart related = new StableMultipart("related", mark + ".page");
    related.addBodyPart(text(page.html(), "html"));
    for (Enclosure picture : page.pictures()) {
      related.addBodyPart(inline(picture));
    }
    return holding(related);
  }

  private static MimeBodyPart holding(StableMultipart parts) throws MessagingException {
    MimeBodyPart part = new MimeBodyPart();
    part.setContent(parts);
    return part;
  }

  /** Within the 70 characters that RFC 2046 allows, however long the ids are. */
  private String boundary(Letter letter) {
    return "=_" + UUID.nameUUIDFromBytes(id(letter).getBytes(StandardCharsets.UTF_8));
  }

  private static MimeBodyPart text(String text, String subtype) throws MessagingException {
    MimeBodyPart part = new MimeBodyPart();
    fill(part, text, subtype);
    return part;
  }

  private static void fill(MimePart part, String text, String subtype) throws MessagingException {
    part.setText(text, StandardCharsets.UTF_8.name(), subtype);
    part.setHeader("Content-Transfer-Encoding", "quoted-printable");
  }

  private static MimeBodyPart file(Enclosure enclosure) throws MessagingException {
    MimeBodyPart part = bytes(enclosure);
    part.setFileName(enclosure.name());
    return part;
  }

  private static MimeBodyPart inline(Enclosure picture) throws MessagingException {
    MimeBodyPart part = bytes(picture);
    part.setContentID("<" + picture.name() + ">");
    part.setDisposition(Part.INLINE);
    return part;
  }

  private static MimeBodyPart bytes(Enclosure enclosure) throws MessagingException {
    MimeBodyPart part = new MimeBodyPart();
    part.setDataHandler(
        new DataHandler(new ByteArrayDataSource(enclosure.content(), enclosure.type())));
    part.setHeader("Content-Transfer-Encoding", "base64");
    return part;
  }
}
