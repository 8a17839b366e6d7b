package withers.report.mail;

import java.util.Optional;
import withers.workspace.MailSettings;
import withers.workspace.MailSettings.Details;

/** Makes mails: with a list in them where the settings allow it, else with a summary. */
final class MailMaker {
  private static final int KIB = 1024;
  private static final String DETAILS = "mail.summary.details";
  private static final String SIZE = "mail.summary.size";

  private final Composer composer;
  private final MailSettings settings;

  MailMaker(Envelope envelope, String language, MailSettings settings) {
    this.composer = new Composer(envelope, language);
    this.settings = settings;
  }

  /** The mail of a list. */
  ReadyMail mail(ListLetter letter, MailAddress to) {
    if (isWithoutDetails()) {
      return summary(letter.summary(DETAILS), to);
    }
    byte[] whole = composer.bytes(letter.whole(), to);
    return isTooLarge(whole) ? summary(letter.summary(SIZE), to) : new ReadyMail(to, false, whole);
  }

  /** The mail of the overview, with the coordinator's list if there is one. */
  ReadyMail mail(OverviewLetter letter, Optional<ListLetter> own, MailAddress to) {
    if (own.isEmpty()) {
      byte[] alone = composer.bytes(letter.alone(), to);
      return isTooLarge(alone) ? summary(letter.brief(), to) : new ReadyMail(to, false, alone);
    }
    if (isWithoutDetails()) {
      return summary(letter.without(own.get().list(), DETAILS), to);
    }
    byte[] whole = composer.bytes(letter.with(own.get()), to);
    return isTooLarge(whole)
        ? summary(letter.without(own.get().list(), SIZE), to)
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
