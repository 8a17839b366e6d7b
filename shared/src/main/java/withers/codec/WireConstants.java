package withers.codec;

import java.util.List;
import withers.cases.CaseStep;
import withers.cases.Channel;
import withers.cases.Outcome;
import withers.cases.Settlement;
import withers.delivery.Delivery;
import withers.fact.Basis;
import withers.fact.ContactRole;
import withers.fact.EndReason;
import withers.fact.LookUpAnswer;
import withers.fact.ScanResult;
import withers.fact.Slot;
import withers.fact.Species;
import withers.fact.WithdrawalReason;

/** The wire table's part for enum constants. Ids and names are for good: add, never change. */
final class WireConstants {

  private WireConstants() {}

  static final Constants<Species> SPECIES =
      Constants.of("species", Species.class)
          .put(1, "dog", Species.DOG)
          .put(2, "cat", Species.CAT)
          .put(3, "rabbit", Species.RABBIT)
          .put(4, "ferret", Species.FERRET)
          .put(5, "horse", Species.HORSE)
          .put(6, "bird", Species.BIRD)
          .put(7, "other", Species.OTHER)
          .put(8, "unstated", Species.UNSTATED);

  static final Constants<Basis> BASES =
      Constants.of("basis", Basis.class)
          .put(1, "birth", Basis.BIRTH)
          .put(2, "intake-stray", Basis.INTAKE_STRAY)
          .put(3, "intake-surrender", Basis.INTAKE_SURRENDER)
          .put(4, "intake-seizure", Basis.INTAKE_SEIZURE)
          .put(5, "stray-hold-ended", Basis.STRAY_HOLD_ENDED)
          .put(6, "transfer", Basis.TRANSFER)
          .put(7, "sale", Basis.SALE)
          .put(8, "sale-returned", Basis.SALE_RETURNED)
          .put(9, "adoption", Basis.ADOPTION)
          .put(10, "adoption-returned", Basis.ADOPTION_RETURNED)
          .put(11, "trial-started", Basis.TRIAL_STARTED)
          .put(12, "trial-finalised", Basis.TRIAL_FINALISED)
          .put(13, "foster", Basis.FOSTER)
          .put(14, "boarding", Basis.BOARDING)
          .put(15, "return-to-owner", Basis.RETURN_TO_OWNER)
          .put(16, "return-to-colony", Basis.RETURN_TO_COLONY)
          .put(17, "import", Basis.IMPORT);

  static final Constants<Slot> SLOTS =
      Constants.of("slot", Slot.class)
          .put(1, "animal", Slot.ANIMAL)
          .put(2, "link", Slot.LINK)
          .put(3, "pairing", Slot.PAIRING)
          .put(4, "supply", Slot.SUPPLY)
          .put(5, "implant", Slot.IMPLANT)
          .put(6, "visit", Slot.VISIT)
          .put(7, "scan", Slot.SCAN)
          .put(8, "intake", Slot.INTAKE)
          .put(9, "outcome", Slot.OUTCOME)
          .put(10, "movement", Slot.MOVEMENT)
          .put(11, "sale", Slot.SALE)
          .put(12, "sale-return", Slot.SALE_RETURN)
          .put(13, "registration", Slot.REGISTRATION)
          .put(14, "registration-end", Slot.REGISTRATION_END)
          .put(15, "look-up", Slot.LOOK_UP)
          .put(16, "report", Slot.REPORT)
          .put(17, "reunion", Slot.REUNION)
          .put(18, "death", Slot.DEATH)
          .put(19, "listing", Slot.LISTING);

  static final Constants<ContactRole> ROLES =
      Constants.of("contact role", ContactRole.class)
          .put(1, "primary", ContactRole.PRIMARY)
          .put(2, "secondary", ContactRole.SECONDARY)
          .put(3, "emergency", ContactRole.EMERGENCY)
          .put(4, "organisation", ContactRole.ORGANISATION);

  static final Constants<EndReason> END_REASONS =
      Constants.of("end reason", EndReason.class)
          .put(1, "cancelled", EndReason.CANCELLED)
          .put(2, "expired", EndReason.EXPIRED)
          .put(3, "transferred-out", EndReason.TRANSFERRED_OUT)
          .put(4, "died", EndReason.DIED)
          .put(5, "unstated", EndReason.UNSTATED);

  static final Constants<LookUpAnswer> ANSWERS =
      Constants.of("look-up answer", LookUpAnswer.class)
          .put(1, "registered", LookUpAnswer.REGISTERED)
          .put(2, "not-registered", LookUpAnswer.NOT_REGISTERED)
          .put(3, "registered-elsewhere", LookUpAnswer.REGISTERED_ELSEWHERE);

  static final Constants<ScanResult> SCAN_RESULTS =
      Constants.of("scan result", ScanResult.class)
          .put(1, "read", ScanResult.READ)
          .put(2, "not-detected", ScanResult.NOT_DETECTED);

  static final Constants<WithdrawalReason> WITHDRAWAL_REASONS =
      Constants.of("withdrawal reason", WithdrawalReason.class)
          .put(1, "cancelled", WithdrawalReason.CANCELLED)
          .put(2, "number-corrected", WithdrawalReason.NUMBER_CORRECTED)
          .put(3, "slot-emptied", WithdrawalReason.SLOT_EMPTIED)
          .put(4, "still-listed", WithdrawalReason.STILL_LISTED);

  static final Constants<CaseStep.Step> STEPS =
      Constants.of("step", CaseStep.Step.class)
          .put(1, "opened", CaseStep.Step.OPENED)
          .put(2, "closed", CaseStep.Step.CLOSED);

  static final Constants<Settlement.Relation> RELATIONS =
      Constants.of("relation", Settlement.Relation.class)
          .put(1, "same-person", Settlement.Relation.SAME_PERSON)
          .put(2, "same-household", Settlement.Relation.SAME_HOUSEHOLD)
          .put(3, "different-people", Settlement.Relation.DIFFERENT_PEOPLE);

  static final Constants<Outcome> OUTCOMES =
      Constants.of("outcome", Outcome.class)
          .put(1, "tried", Outcome.TRIED)
          .put(2, "not-reached", Outcome.NOT_REACHED)
          .put(3, "not-ours", Outcome.NOT_OURS)
          .put(4, "leave", Outcome.LEAVE)
          .put(5, "will-do", Outcome.WILL_DO)
          .put(6, "gone", Outcome.GONE)
          .put(7, "died", Outcome.DIED)
          .put(8, "our-mistake", Outcome.OUR_MISTAKE)
          .put(9, "put-right", Outcome.PUT_RIGHT);

  static final Constants<Channel> CHANNELS =
      Constants.of("channel", Channel.class)
          .put(1, "phone", Channel.PHONE)
          .put(2, "email", Channel.EMAIL)
          .put(3, "post", Channel.POST)
          .put(4, "not-at-all", Channel.NOT_AT_ALL);

  static final Constants<Delivery.Step> DELIVERY_STEPS =
      Constants.of("delivery step", Delivery.Step.class)
          .put(1, "pending", Delivery.Step.PENDING)
          .put(2, "accepted", Delivery.Step.ACCEPTED)
          .put(3, "refused", Delivery.Step.REFUSED)
          .put(4, "postponed", Delivery.Step.POSTPONED)
          .put(5, "unsure", Delivery.Step.UNSURE)
          .put(6, "arrived", Delivery.Step.ARRIVED)
          .put(7, "lost", Delivery.Step.LOST);

  static final List<Constants<?>> ALL =
      List.of(
          SPECIES,
          BASES,
          SLOTS,
          ROLES,
          END_REASONS,
          ANSWERS,
          SCAN_RESULTS,
          WITHDRAWAL_REASONS,
          STEPS,
          RELATIONS,
          OUTCOMES,
          CHANNELS,
          DELIVERY_STEPS);
}
