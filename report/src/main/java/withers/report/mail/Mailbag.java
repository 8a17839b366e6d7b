package withers.report.mail;

import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import withers.id.OrganisationId;
import withers.organisation.Organisation;
import withers.report.list.FollowUpList;
import withers.report.text.Texts;
import withers.workspace.MailSettings;

/** Makes the mails of a run, list by list. */
public final class Mailbag {

  /** What is done with a mail that was made: it may be kept somewhere else than in memory. */
  @FunctionalInterface
  public interface Keeping {

    /** Keeps a mail, and returns it as it is to be handed over. */
    ReadyMail keep(OrganisationId recipient, ReadyMail mail);
  }

  private final MailMaker maker;
  private final Keeping keeping;
  private final SortedMap<OrganisationId, ReadyMail> ready = new TreeMap<>();
  private final List<Organisation> unaddressed = new ArrayList<>();

  /**
   * An empty one.
   *
   * @param sender from whose configured address the mails come
   * @param network the name beside that address
   * @param written when the mails are made
   * @param settings whether lists stand in mails, and how large a mail may be
   * @throws IllegalArgumentException when the sender has no address that mail can be sent from
   */
  public Mailbag(
      Organisation sender,
      String network,
      ZonedDateTime written,
      Texts texts,
      MailSettings settings,
      Keeping keeping) {
    MailAddress from =
        Mails.address(sender)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "Expected a mail address of %s, but found none".formatted(sender.id())));
    this.maker = new MailMaker(new Envelope(sender, network, from, written), texts, settings);
    this.keeping = keeping;
  }

  /** Makes a list's mail, if it has something to say and its reader has an address. */
  public void add(FollowUpList list) {
    if (list.size() > 0) {
      Organisation to = list.organisation();
      Mails.address(to)
          .ifPresentOrElse(
              address -> ready.put(to.id(), keeping.keep(to.id(), maker.mail(list, address))),
              () -> unaddressed.add(to));
    }
  }

  /** The mails so far. */
  public Mails mails() {
    return new Mails(ready, unaddressed);
  }
}
