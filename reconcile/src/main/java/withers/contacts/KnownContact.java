package withers.contacts;

import java.util.Optional;
import withers.id.OrganisationId;
import withers.matching.form.Address;
import withers.matching.form.NormalForm;

/**
 * A contact as it is compared. The text form never shows details.
 *
 * @param is what it is, without details
 */
record KnownContact(NormalForm form, Known is) {

  static KnownContact of(NormalForm form, Optional<OrganisationId> organisation) {
    boolean canBeReached = !form.phones().isEmpty() || !form.emails().isEmpty();
    // A town alone is no place.
    boolean isOnlyAName = !canBeReached && form.address().filter(Address::hasStreet).isEmpty();
    return new KnownContact(
        form,
        new Known(organisation, form.name().isEmpty() && isOnlyAName, canBeReached, isOnlyAName));
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
