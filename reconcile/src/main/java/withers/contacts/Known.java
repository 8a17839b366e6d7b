package withers.contacts;

import java.util.Optional;
import withers.finding.Who;
import withers.id.OrganisationId;

/**
 * What a contact is, without what it says.
 *
 * @param organisation which it is, or stands for
 * @param isNobody whether it states nothing to know anybody by
 * @param canBeReached whether it states a phone or an e-mail address
 * @param isOnlyAName whether it states neither a way to reach anybody nor a place
 */
record Known(
    Optional<OrganisationId> organisation,
    boolean isNobody,
    boolean canBeReached,
    boolean isOnlyAName) {

  /** The organisation that it is, or nobody when it states nothing to know anybody by. */
  Optional<Who> notAPerson() {
    Optional<Who> nobody = isNobody ? Optional.of(new Who.Nobody()) : Optional.empty();
    return organisation.<Who>map(Who.Organisation::new).or(() -> nobody);
  }

  boolean isPerson() {
    return organisation.isEmpty() && !isNobody;
  }
}
