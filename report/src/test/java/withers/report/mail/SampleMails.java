package withers.report.mail;

import static withers.report.Coast.COORDINATOR;

import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import withers.id.OrganisationId;
import withers.organisation.Organisation;
import withers.report.Coast;
import withers.report.Samples;
import withers.report.list.FollowUpList;
import withers.report.text.Texts;
import withers.report.xlsx.ListWorkbook;
import withers.workspace.MailSettings;

/** Mails of the samples, for tests of sending. */
public final class SampleMails {
  private SampleMails() {}

  /** A mail of so many lines of 64 bytes, which say nothing. */
  public static ReadyMail lines(int number) {
    byte[] lines = ("x".repeat(62) + "\r\n").repeat(number).getBytes(StandardCharsets.US_ASCII);
    return new ReadyMail(new MailAddress("post@example.org"), false, lines);
  }

  /** Those of the sample run. */
  public static SortedMap<OrganisationId, ReadyMail> ready() {
    Texts texts = Texts.in(Locale.UK);
    return of(
            new Samples().lists(texts),
            Coast.DIRECTORY.find(COORDINATOR).orElseThrow(),
            "Coast Network",
            ZonedDateTime.of(2026, 3, 1, 6, 30, 0, 0, ZoneOffset.UTC),
            texts,
            MailSettings.DEFAULT)
        .ready();
  }

  /** The mails of lists, kept in memory. */
  static Mails of(
      List<FollowUpList> lists,
      Organisation sender,
      String network,
      ZonedDateTime written,
      Texts texts,
      MailSettings settings) {
    Mailbag bag = new Mailbag(sender, network, written, texts, settings, (to, mail) -> mail);
    lists.forEach(list -> bag.add(list, () -> new ListWorkbook(texts).of(list)));
    return bag.mails();
  }
}
