package withers.report.mail;

import withers.report.list.FollowUpList;
import withers.report.text.Texts;
import withers.workspace.MailSettings;
import withers.workspace.MailSettings.Details;

/** Makes a list's mail: with the list in it where the settings allow it, else a summary. */
final class MailMaker {
  private static final int KIB = 1024;

  private final ListMail mail;
  private final MailSettings settings;

  MailMaker(Envelope envelope, Texts texts, MailSettings settings) {
    this.mail = new ListMail(envelope, texts);
    this.settings = settings;
  }

  ReadyMail mail(FollowUpList list, MailAddress to) {
    if (settings.details() == Details.LEFT_OUT) {
      return summary(list, to, "mail.summary.details");
    }
    byte[] whole = mail.whole(list, to);
    return whole.length > (long) settings.largestKib() * KIB
        ? summary(list, to, "mail.summary.size")
        : new ReadyMail(to, false, whole);
  }

  private ReadyMail summary(FollowUpList list, MailAddress to, String why) {
    return new ReadyMail(to, true, mail.summary(list, to, why));
  }
}
