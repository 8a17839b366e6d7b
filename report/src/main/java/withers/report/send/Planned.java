package withers.report.send;

import java.time.LocalDate;
import java.util.List;
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
   * All mails that are ready, in the order of the lists.
   *
   * @param interval days between mails that bring nothing new, from 1
   */
  public static List<Planned> of(
      Published published, Mailings mailings, LocalDate today, int interval) {
    return published.mails().stream()
        .flatMap(mails -> planned(published.lists(), mails))
        .map(one -> one.judged(mailings, today, interval))
        .toList();
  }

  private static Stream<Planned> planned(List<Listed> lists, Mails mails) {
    return lists.stream()
        .flatMap(
            list ->
                Optional.ofNullable(mails.ready().get(list.organisation().id()))
                    .map(mail -> new Planned(list, mail, new Due.First()))
                    .stream());
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
