package withers.report.publish;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import withers.id.OrganisationId;
import withers.organisation.Organisation;
import withers.report.list.Listed;
import withers.report.mail.Mails;
import withers.report.overview.Overview;

/**
 * What was made after a run, and where it is.
 *
 * @param coordinator who gets the overview
 * @param lists one for each organisation that has, or had, something to follow up
 * @param folder holds the lists and the overview
 * @param outbox holds the mails
 * @param mails empty when the coordinator has no address to send them from
 */
public record Published(
    Organisation coordinator,
    Overview overview,
    List<Listed> lists,
    Path folder,
    Path outbox,
    Optional<Mails> mails) {
  public Published {
    lists = List.copyOf(lists);
  }

  /** Who has a mail ready to be sent. */
  public Set<OrganisationId> mailed() {
    return mails.map(all -> all.ready().keySet()).orElse(Set.of());
  }

  /** The coordinator's list where none was made, since there is nothing on it. */
  public Listed none() {
    return new Listed(coordinator, overview.run(), overview.asOf(), 0, 0, 0, 0, 0, List.of());
  }
}
