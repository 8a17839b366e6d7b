package withers.report.mail;

import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;
import withers.id.OrganisationId;
import withers.organisation.Directory;
import withers.organisation.Organisation;
import withers.report.chart.Drawing;
import withers.report.list.FollowUpList;
import withers.report.overview.Overview;
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

  private final Organisation coordinator;
  private final MailAddress from;
  private final Texts texts;
  private final MailSettings settings;
  private final MailMaker maker;
  private final Keeping keeping;
  private final SortedMap<OrganisationId, ReadyMail> ready = new TreeMap<>();
  private final List<Organisation> unaddressed = new ArrayList<>();
  private Optional<OverviewLetter> overview = Optional.empty();

  /**
   * An empty one.
   *
   * @param sender the coordinator, from whose configured address the mails come
   * @param network the name beside that address
   * @param written when the mails are made
   * @param settings whether lists stand in mails, how large a mail may be, and whether the overview
   *     is mailed
   * @throws IllegalArgumentException when the sender has no address that mail can be sent from
   */
  public Mailbag(
      Organisation sender,
      String network,
      ZonedDateTime written,
      Texts texts,
      MailSettings settings,
      Keeping keeping) {
    this.coordinator = sender;
    this.from =
        Mails.address(sender)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "Expected a mail address of %s, but found none".formatted(sender.id())));
    this.maker =
        new MailMaker(new Envelope(sender, network, from, written), texts.language(), settings);
    this.texts = texts;
    this.settings = settings;
    this.keeping = keeping;
  }

  /** Makes the coordinator's mail, unless the settings say that the overview is not mailed. */
  public void add(Overview run, Directory directory, Drawing drawing) {
    if (settings.overview() == MailSettings.Overview.MAILED) {
      OverviewLetter letter =
          new OverviewLetter(run, directory, coordinator, from.domain(), drawing, texts);
      overview = Optional.of(letter);
      keep(coordinator, maker.mail(letter, Optional.empty(), from));
    }
  }

  /**
   * Makes a list's mail, if it has something to say and its reader has an address. The
   * coordinator's comes with the overview that was added before: a run is one mail to each.
   *
   * @param sheet makes the list's workbook, or has it already
   */
  public void add(FollowUpList list, Supplier<byte[]> sheet) {
    if (list.size() > 0) {
      Organisation to = list.organisation();
      ListLetter letter = new ListLetter(list, sheet, coordinator, texts);
      Mails.address(to)
          .ifPresentOrElse(address -> keep(to, mail(letter, address)), () -> unaddressed.add(to));
    }
  }

  private ReadyMail mail(ListLetter list, MailAddress to) {
    return overview
        .filter(with -> list.list().organisation().id().equals(coordinator.id()))
        .map(letter -> maker.mail(letter, Optional.of(list), to))
        .orElseGet(() -> maker.mail(list, to));
  }

  private void keep(Organisation to, ReadyMail mail) {
    ready.put(to.id(), keeping.keep(to.id(), mail));
  }

  /** The mails so far. */
  public Mails mails() {
    return new Mails(ready, unaddressed);
  }
}
