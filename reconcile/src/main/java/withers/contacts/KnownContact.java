package withers.contacts;

import java.util.Optional;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.matching.form.Address;
import withers.matching.form.NormalForm;

/**
 * A contact as it is compared. The text form never shows details.
 *
 * @param organisation which it is, or stands for
 */
record KnownContact(NormalForm form, Optional<OrganisationId> organisation) {

  /** The organisation that it is, or nobody when it states nothing to know anybody by. */
  Optional<Who> notAPerson() {
    Optional<Who> nobody = isNobody() ? Optional.of(new Who.Nobody()) : Optional.empty();
    return organisation.<Who>map(Who.Organisation::new).or(() -> nobody);
  }

  private boolean isNobody() {
    return form.name().isEmpty() && isOnlyAName();
  }

  /** Whether it states neither a way to reach anybody nor a place: a town alone is none. */
  boolean isOnlyAName() {
    return !canBeReached() && form.address().filter(Address::hasStreet).isEmpty();
  }

  boolean canBeReached() {
    return !form.phones().isEmpty() || !form.emails().isEmpty();
  }

  /** Whether a phone or a mailbox of both is the same. */
  static boolean isReachedAlike(NormalForm one, NormalForm other) {
    return one.phones().stream().anyMatch(phone -> other.phones().stream().anyMatch(phone::isSame))
        || one.emails().stream().anyMatch(mail -> other.emails().stream().anyMatch(mail::isSame));
  }

  @Override
  public String toString() {
    return "KnownContact[details withheld]";
  }
}
