package withers.report.cli;

import com.icegreen.greenmail.util.GreenMail;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import withers.report.mail.smtp.FaultyServer;

/** What GreenMail holds, as its readers have it. */
final class Mailbox {
  private Mailbox() {}

  /** All mails, ordered by recipient. */
  static List<SentList> of(GreenMail server) throws MessagingException, IOException {
    List<SentList> mails = new ArrayList<>();
    for (MimeMessage message : server.getReceivedMessages()) {
      mails.add(SentList.of(taken(message)));
    }
    mails.sort(Comparator.comparing(SentList::to));
    return mails;
  }

  private static FaultyServer.Taken taken(MimeMessage message)
      throws MessagingException, IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    message.writeTo(bytes, new String[] {"Received", "Return-Path"});
    return new FaultyServer.Taken(
        message.getFrom()[0].toString(),
        message.getAllRecipients()[0].toString(),
        bytes.toString(StandardCharsets.ISO_8859_1));
  }
}
