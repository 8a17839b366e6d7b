package withers.priority;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import withers.fact.Species;
import withers.finding.Band;
import withers.finding.FindingKind;
import withers.finding.Priority;
import withers.finding.Priority.Factor;

/** Works out priorities: docs/priorities.md. Pure; integers only, so that order is exact. */
public final class Priorities {

  /** Days for which a hand-over counts as recent (our judgement). */
  public static final int RECENT_DAYS = 120;

  private Priorities() {}

  /**
   * The priority of a finding.
   *
   * @param start the day on which the custodian's time started, if one is known
   * @param fields for details that differ, the names of the fields
   */
  public static Priority of(
      FindingKind kind,
      Species species,
      Optional<LocalDate> start,
      List<String> fields,
      LocalDate asOf) {
    boolean recent =
        start.filter(day -> ChronoUnit.DAYS.between(day, asOf) <= RECENT_DAYS).isPresent();
    List<Factor> factors = factors(kind, species, recent, fields);
    return new Priority(band(kind, recent), product(factors), factors);
  }

  /**
   * The priority of a damaged number.
   *
   * @param isFound whether the record found its animal all the same
   */
  public static Priority ofDamagedNumber(Species species, boolean isFound) {
    List<Factor> factors = new ArrayList<>(chances(FindingKind.NUMBER_DAMAGED, species));
    factors.add(
        isFound
            ? new Factor("number-found", Weights.NUMBER_FOUND)
            : new Factor("other-records", Weights.OTHER_RECORDS));
    return new Priority(isFound ? Band.WHEN_POSSIBLE : Band.THIS_MONTH, product(factors), factors);
  }

  /** The same while a stray's owner is still waited for: after that somebody else may get it. */
  public static Priority whileHeld(Priority priority) {
    List<Factor> factors = new ArrayList<>(priority.arithmetic());
    factors.add(new Factor("stray-hold", Weights.STRAY_HOLD));
    return new Priority(priority.band(), product(factors), factors);
  }

  /** The priority of a supplied range with numbers that nobody speaks of. */
  public static Priority ofStock() {
    List<Factor> factors =
        new ArrayList<>(chances(FindingKind.STOCK_UNACCOUNTED, Species.UNSTATED));
    factors.add(new Factor("still-in-the-box", Weights.STILL_IN_THE_BOX));
    return new Priority(band(FindingKind.STOCK_UNACCOUNTED, false), product(factors), factors);
  }

  private static Band band(FindingKind kind, boolean recent) {
    return switch (kind) {
      case FOUND_WAITING, LOST_UNREACHABLE -> Band.TODAY;
      case NUMBER_ON_TWO_ANIMALS, CHIPS_DIVERGE -> Band.THIS_WEEK;
      case CONTACT_BEHIND,
          PLACEHOLDER_CONTACT,
          MISTYPED_REGISTRATION,
          PREPAID_UNUSED,
          UNREGISTERED ->
          recent ? Band.THIS_WEEK : Band.THIS_MONTH;
      case CUSTODY_UNCLEAR,
          RECORDS_BEHIND,
          REGISTRIES_DISAGREE,
          TRAIL_ENDS_AT_PURCHASER,
          NOT_DETECTED,
          NUMBER_DAMAGED ->
          Band.THIS_MONTH;
      case DETAILS_DIFFER,
          REGISTERED_ELSEWHERE,
          SCAN_OVERDUE,
          NON_ISO_ONLY,
          REGISTERED_AFTER_DEATH,
          STOCK_UNACCOUNTED ->
          Band.WHEN_POSSIBLE;
    };
  }

  private static List<Factor> factors(
      FindingKind kind, Species species, boolean recent, List<String> fields) {
    List<Factor> factors = new ArrayList<>(chances(kind, species));
    certainty(kind, fields).ifPresent(factors::add);
    if (recent && !Weights.isLost(kind)) {
      factors.add(new Factor("recent-hand-over", Weights.RECENT_HAND_OVER));
    }
    return factors;
  }

  private static List<Factor> chances(FindingKind kind, Species species) {
    return List.of(
        new Factor("lost-within-a-year", Weights.lost(kind, species)),
        new Factor("contact-fails", Weights.contactFails(kind, species)));
  }

  private static Optional<Factor> certainty(FindingKind kind, List<String> fields) {
    return switch (kind) {
      case NUMBER_ON_TWO_ANIMALS, CHIPS_DIVERGE, REGISTRIES_DISAGREE ->
          Optional.of(new Factor("one-of-two", Weights.ONE_OF_TWO));
      case CUSTODY_UNCLEAR -> Optional.of(new Factor("custody-open", Weights.CUSTODY_OPEN));
      case RECORDS_BEHIND -> Optional.of(new Factor("our-record", Weights.OUR_RECORD));
      case DETAILS_DIFFER ->
          fields.contains("phone")
              ? Optional.empty()
              : Optional.of(new Factor("no-phone-differs", Weights.NO_PHONE_DIFFERS));
      case NOT_DETECTED -> Optional.of(new Factor("read-elsewhere", Weights.READ_ELSEWHERE));
      case REGISTERED_ELSEWHERE ->
          Optional.of(new Factor("asked-elsewhere", Weights.ASKED_ELSEWHERE));
      case SCAN_OVERDUE -> Optional.of(new Factor("no-sign-of-harm", Weights.NO_SIGN_OF_HARM));
      case NON_ISO_ONLY -> Optional.of(new Factor("not-read", Weights.NOT_READ));
      case FOUND_WAITING,
          LOST_UNREACHABLE,
          CONTACT_BEHIND,
          PLACEHOLDER_CONTACT,
          MISTYPED_REGISTRATION,
          PREPAID_UNUSED,
          UNREGISTERED,
          TRAIL_ENDS_AT_PURCHASER,
          REGISTERED_AFTER_DEATH,
          NUMBER_DAMAGED,
          STOCK_UNACCOUNTED ->
          Optional.empty();
    };
  }

  private static long product(List<Factor> factors) {
    long product = Weights.ONE;
    for (Factor factor : factors) {
      product = product * factor.millionths() / Weights.ONE;
    }
    return product;
  }
}
