package withers.report.send;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import withers.delivery.Delivery;
import withers.delivery.Delivery.Step;
import withers.id.OrganisationId;
import withers.mailing.Due;
import withers.mailing.LastMail;
import withers.mailing.Mailings;
import withers.report.list.Listed;
import withers.report.mail.Mails;
import withers.report.mail.ReadyMail;
import withers.report.publish.Published;

/** A mail that is ready, and whether it goes out. */
public record Planned(Listed list, ReadyMail mail, Due due) {

  /**
   * All mails that are ready, in the order of their recipients' ids.
   *
   * @param interval days between mails that bring nothing new, from 1
   */
  public static List<Planned> of(
      Published published, Mailings mailings, LocalDate today, int interval) {
    return published.mails().stream()
        .flatMap(mails -> planned(published, mails))
        .map(one -> one.judged(mailings, today, interval))
        .toList();
  }

  /** Whom no list is made for is the coordinator: the overview is the whole mail. */
  private static Stream<Planned> planned(Published published, Mails mails) {
    Map<OrganisationId, Listed> lists = new HashMap<>();
    published.lists().forEach(list -> lists.put(list.organisation().id(), list));
    return mails.ready().entrySet().stream()
        .map(
            one ->
                new Planned(
                    lists.getOrDefault(one.getKey(), published.none()),
                    one.getValue(),
                    new Due.First()));
  }

  private Planned judged(Mailings mailings, LocalDate today, int interval) {
    Optional<LastMail> last = mailings.lastBefore(list.run(), list.asOf(), recipient());
    boolean isNew = list.fresh() > 0;
    Due judged = Due.of(mailings.fate(list.run(), recipient()), last, isNew, today, interval);
    return new Planned(list, mail, judged);
  }

  public OrganisationId recipient() {
    return list.organisation().id();
  }

  /** The step before it is handed over. */
  Delivery pending(LocalDate today) {
    return new Delivery(recipient(), list.run(), list.asOf(), today, Step.PENDING, list.told(), "");
  }
}
