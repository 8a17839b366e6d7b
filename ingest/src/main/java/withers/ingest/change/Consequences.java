package withers.ingest.change;

import java.util.Map;
import java.util.Optional;
import withers.chip.ChipNumber;
import withers.chip.LostDigits;
import withers.chip.OneSlip;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.fact.WithdrawalReason;
import withers.id.RecordKey;

/**
 * What a version means for everything that the record said at earlier export dates and no longer
 * says. It is decided against all of that, not against the version just before: which one is just
 * before depends on the order of imports.
 */
record Consequences(Disappearance disappearance, Announcements announce) {

  /**
   * Announces the consequences.
   *
   * @param formers slots that were filled before, by subject
   */
  void of(RecordKey key, Version version, int day, Map<Subject, Integer> formers) {
    formers.forEach((subject, slots) -> of(key, version, day, subject, slots));
  }

  private void of(RecordKey key, Version version, int day, Subject former, int slots) {
    if (version.isUnreadable() || version.speaksOf(former)) {
      stays(key, version, day, former, slots);
    } else {
      goes(key, version, day, former, slots);
    }
  }

  /** What is spoken of only by a link, or by a row that can't be read, says nothing by itself. */
  private void stays(RecordKey key, Version version, int day, Subject former, int slots) {
    if (!version.isUnreadable()) {
      int emptied = slots & ~version.slotsFor(former) & Place.CORRECTING;
      withdraw(key, former, emptied, WithdrawalReason.SLOT_EMPTIED, day);
    }
    if (!version.states(former)) {
      withdraw(key, former, Place.bit(Slot.LISTING), WithdrawalReason.STILL_LISTED, day);
    }
  }

  private void goes(RecordKey key, Version version, int day, Subject former, int slots) {
    announce.noLongerListed(key, former, day);
    if (disappearance == Disappearance.CANCELLED) {
      withdraw(key, former, slots, WithdrawalReason.CANCELLED, day);
    }
    if (isCorrected(former, version)) {
      withdraw(key, former, slots, WithdrawalReason.NUMBER_CORRECTED, day);
    }
  }

  private void withdraw(
      RecordKey key, Subject former, int slots, WithdrawalReason reason, int day) {
    Place.slots(slots).forEach(slot -> announce.withdraw(key, former, slot, reason, day));
  }

  private static boolean isCorrected(Subject former, Version version) {
    return former instanceof Subject.Damaged && !version.isAbsent()
        || former.chip().filter(number -> isPutRight(number, version)).isPresent();
  }

  /** The record's number now is one slip away, or has the digits that this one lost. */
  private static boolean isPutRight(ChipNumber number, Version version) {
    Optional<LostDigits> lost = LostDigits.of(number);
    return version.places().stream()
        .flatMap(place -> place.subject().chip().stream())
        .anyMatch(
            now -> OneSlip.between(number, now) || lost.filter(cut -> cut.admits(now)).isPresent());
  }
}
