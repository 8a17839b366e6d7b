package withers.ingest.translate;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import withers.fact.ContactRole;
import withers.fact.EndReason;
import withers.fact.Fact;
import withers.fact.Party;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.PartyName;
import withers.ingest.profile.RegistryStatus;

/** A registry's record of a number: the contacts, and whether the registration has ended. */
final class RegistryContacts {

  private static final Map<PartyName, ContactRole> ROLES =
      Map.of(
          PartyName.PRIMARY, ContactRole.PRIMARY,
          PartyName.SECONDARY, ContactRole.SECONDARY,
          PartyName.EMERGENCY, ContactRole.EMERGENCY,
          PartyName.ORGANISATION, ContactRole.ORGANISATION);

  private RegistryContacts() {}

  static void translate(RowInHand row, Subject chip) {
    Optional<LocalDate> updated = row.day(ColumnName.UPDATED);
    Optional<LocalDate> registered = row.day(ColumnName.REGISTERED);
    row.state(
        chip,
        Slot.REGISTRATION,
        updated.or(() -> registered),
        new Fact.Registered(row.optionalText(ColumnName.ACCOUNT), contacts(row)));
    end(row, chip);
  }

  private static Map<ContactRole, Party> contacts(RowInHand row) {
    Map<ContactRole, Party> contacts = new EnumMap<>(ContactRole.class);
    ROLES.forEach(
        (name, role) -> {
          Party party = row.party(name);
          if (!(party instanceof Party.Unstated)) {
            contacts.put(role, party);
          }
        });
    return contacts;
  }

  private static void end(RowInHand row, Subject chip) {
    Optional<LocalDate> ended = row.day(ColumnName.ENDED);
    Optional<EndReason> status = reason(row, ColumnName.STATUS);
    Optional<EndReason> stated = reason(row, ColumnName.END_REASON);
    boolean hasReason = stated.isPresent() && !row.text(ColumnName.END_REASON).isEmpty();
    if (ended.isPresent() || status.isPresent() || hasReason) {
      EndReason reason = stated.or(() -> status).orElse(EndReason.UNSTATED);
      row.state(chip, Slot.REGISTRATION_END, ended, new Fact.RegistrationEnded(reason));
      if (reason == EndReason.DIED) {
        Animals.died(row, chip, ended);
      }
    }
  }

  private static Optional<EndReason> reason(RowInHand row, ColumnName column) {
    return row.word(column, RegistryStatus.class).flatMap(RegistryStatus::end);
  }
}
