package withers.report.mail;

import java.util.Optional;
import withers.organisation.Organisation;
import withers.report.list.FollowUpList;
import withers.report.text.Texts;
import withers.workspace.MailSettings;
import withers.workspace.MailSettings.Details;

/** Makes mails: with a list in them where the settings allow it, else with a summary. */
final class MailMaker {
  private static final int KIB = 1024;
  private static final String DETAILS = "mail.summary.details";
  private static final String SIZE = "mail.summary.size";

  private final Organisation coordinator;
  private final Composer composer;
  private final Texts texts;
  private final MailSettings settings;

  MailMaker(Envelope envelope, Texts texts, MailSettings settings) {
    this.coordinator = envelope.sender();
    this.composer = new Composer(envelope, texts.language());
    this.texts = texts;
    this.settings = settings;
  }

  /** The mail of a list. */
  ReadyMail mail(FollowUpList list, MailAddress to) {
    ListLetter letter = new ListLetter(list, coordinator, texts);
    if (isWithoutDetails()) {
      return summary(letter.summary(DETAILS), to);
    }
    byte[] whole = composer.bytes(letter.whole(), to);
    return isTooLarge(whole) ? summary(letter.summary(SIZE), to) : new ReadyMail(to, false, whole);
  }

  /** The mail of the overview, with the coordinator's list if there is one. */
  ReadyMail mail(OverviewLetter letter, Optional<FollowUpList> own, MailAddress to) {
    if (own.isEmpty()) {
      byte[] alone = composer.bytes(letter.alone(), to);
      return isTooLarge(alone) ? summary(letter.brief(), to) : new ReadyMail(to, false, alone);
    }
    if (isWithoutDetails()) {
      return summary(letter.without(own.get(), DETAILS), to);
    }
    byte[] whole = composer.bytes(letter.with(own.get()), to);
    return isTooLarge(whole)
        ? summary(letter.without(own.get(), SIZE), to)
        : new ReadyMail(to, false, whole);
  }

  private boolean isWithoutDetails() {
    return settings.details() == Details.LEFT_OUT;
  }

  private boolean isTooLarge(byte[] mail) {
    return mail.length > (long) settings.largestKib() * KIB;
  }

  private ReadyMail summary(Letter letter, MailAddress to) {
    return new ReadyMail(to, true, composer.bytes(letter, to));
  }
}
