package withers.report.mail;

import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import withers.id.OrganisationId;
import withers.organisation.Organisation;
import withers.report.list.FollowUpList;
import withers.report.text.Texts;
import withers.workspace.MailSettings;

/**
 * The mails of a run, and who gets none although there is something to say.
 *
 * @param ready each recipient's message, ready to be sent as it is
 * @param unaddressed recipients without an address that mail can be sent to, in the lists' order
 */
public record Mails(SortedMap<OrganisationId, ReadyMail> ready, List<Organisation> unaddressed) {
  public Mails {
    ready = Collections.unmodifiableSortedMap(new TreeMap<>(ready));
    unaddressed = List.copyOf(unaddressed);
  }

  /** Whether mail can be sent from, or to, this organisation's configured address. */
  public static boolean canMail(Organisation organisation) {
    return address(organisation).isPresent();
  }

  /**
   * Makes a mail for each list that has something to say and whose reader has an address.
   *
   * @param sender from whose configured address the mails come
   * @param network the name beside that address
   * @param written when the mails are made
   * @param settings whether lists stand in mails, and how large a mail may be
   * @throws IllegalArgumentException when the sender has no address that mail can be sent from
   */
  public static Mails of(
      List<FollowUpList> lists,
      Organisation sender,
      String network,
      ZonedDateTime written,
      Texts texts,
      MailSettings settings) {
    MailAddress from =
        address(sender)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "Expected a mail address of %s, but found none".formatted(sender.id())));
    Envelope envelope = new Envelope(sender, network, from, written);
    return new Bag(new MailMaker(envelope, texts, settings)).filled(lists);
  }

  private static Optional<MailAddress> address(Organisation organisation) {
    return organisation.mail().filter(MailAddress::isAddress).map(MailAddress::new);
  }

  /** Mails while they are being made. */
  private static final class Bag {
    private final MailMaker maker;
    private final SortedMap<OrganisationId, ReadyMail> ready = new TreeMap<>();
    private final List<Organisation> unaddressed = new ArrayList<>();

    Bag(MailMaker maker) {
      this.maker = maker;
    }

    Mails filled(List<FollowUpList> lists) {
      lists.stream().filter(list -> list.size() > 0).forEach(this::add);
      return new Mails(ready, unaddressed);
    }

    private void add(FollowUpList list) {
      Organisation to = list.organisation();
      address(to)
          .ifPresentOrElse(
              address -> ready.put(to.id(), maker.mail(list, address)), () -> unaddressed.add(to));
    }
  }
}
