package withers.report.mail;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import withers.id.OrganisationId;
import withers.organisation.Organisation;

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

  static Optional<MailAddress> address(Organisation organisation) {
    return organisation.mail().filter(MailAddress::isAddress).map(MailAddress::new);
  }
}
