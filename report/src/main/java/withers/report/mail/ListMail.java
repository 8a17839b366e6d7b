package withers.report.mail;

import jakarta.activation.DataHandler;
import jakarta.mail.Message.RecipientType;
import jakarta.mail.MessagingException;
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
import withers.report.html.Pages;
import withers.report.list.FollowUpList;
import withers.report.text.Texts;
import withers.report.xlsx.ListWorkbook;

/**
 * Makes the mail that brings a list to its reader: the list as text and as a page, the workbook
 * attached (RFC 5322, RFC 2045 to 2047).
 */
final class ListMail {
  private static final String WORKBOOK_TYPE =
      "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
  private static final DateTimeFormatter DATE = // RFC 5322, 3.3
      DateTimeFormatter.ofPattern("EEE, d MMM uuuu HH:mm:ss Z", Locale.ENGLISH);

  private final Envelope envelope;
  private final Texts texts;

  ListMail(Envelope envelope, Texts texts) {
    this.envelope = envelope;
    this.texts = texts;
  }

  /** The message with the list in it. */
  byte[] whole(FollowUpList list, MailAddress to) {
    return bytes(message -> message.setContent(body(list)), list, to);
  }

  /**
   * The message without the list.
   *
   * @param why the key of the sentence that says why
   */
  byte[] summary(FollowUpList list, MailAddress to, String why) {
    String text = new PlainSummary(list, envelope.sender(), texts).because(why);
    return bytes(message -> fill(message, text, "plain"), list, to);
  }

  /** Puts a message's content into it. */
  private interface Filling {
    void into(MimeMessage message) throws MessagingException;
  }

  private byte[] bytes(Filling filling, FollowUpList list, MailAddress to) {
    try {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      message(filling, list, to).writeTo(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (MessagingException e) {
      throw new IllegalStateException("The mail can't be composed", e);
    }
  }

  /** The same for the same run and recipient, however often the mail is made. */
  private String id(FollowUpList list) {
    return "<withers.%s.%s@%s>"
        .formatted(list.run(), list.organisation().id(), envelope.from().domain());
  }

  private MimeMessage message(Filling filling, FollowUpList list, MailAddress to)
      throws MessagingException, UnsupportedEncodingException {
    MimeMessage message = new NamedMessage(id(list));
    message.setFrom(address(envelope.from(), envelope.network()));
    message.setRecipient(RecipientType.TO, address(to, list.organisation().name()));
    message.setSubject(HeaderText.of(subject(list)), StandardCharsets.UTF_8.name());
    message.setHeader("Date", DATE.format(envelope.written()));
    message.setHeader("Auto-Submitted", "auto-generated"); // RFC 3834
    message.setHeader("Content-Language", texts.language());
    filling.into(message);
    message.saveChanges();
    return message;
  }

  private static InternetAddress address(MailAddress address, String name)
      throws UnsupportedEncodingException {
    return new InternetAddress(address.value(), HeaderText.of(name), StandardCharsets.UTF_8.name());
  }

  private String subject(FollowUpList list) {
    return texts.say(
        "mail.subject", list.organisation().name(), texts.date(list.asOf()), list.size());
  }

  private StableMultipart body(FollowUpList list) throws MessagingException {
    String mark = boundary(list);
    StableMultipart words = new StableMultipart("alternative", mark + ".words");
    words.addBodyPart(text(PlainList.of(list, texts), "plain"));
    words.addBodyPart(text(new Pages(texts).mailed(list), "html"));
    MimeBodyPart wordsPart = new MimeBodyPart();
    wordsPart.setContent(words);
    StableMultipart all = new StableMultipart("mixed", mark);
    all.addBodyPart(wordsPart);
    all.addBodyPart(workbook(list));
    return all;
  }

  /** Within the 70 characters that RFC 2046 allows, however long the ids are. */
  private String boundary(FollowUpList list) {
    return "=_" + UUID.nameUUIDFromBytes(id(list).getBytes(StandardCharsets.UTF_8));
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

  private MimeBodyPart workbook(FollowUpList list) throws MessagingException {
    MimeBodyPart part = new MimeBodyPart();
    byte[] bytes = new ListWorkbook(texts).of(list);
    part.setDataHandler(new DataHandler(new ByteArrayDataSource(bytes, WORKBOOK_TYPE)));
    part.setFileName(texts.say("mail.file", list.asOf().toString()));
    part.setHeader("Content-Transfer-Encoding", "base64");
    return part;
  }
}
