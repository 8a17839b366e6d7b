package withers.priority;

import withers.fact.Species;
import withers.finding.FindingKind;

/**
 * The weights, in millionths. Sources: Lancaster, Rand, Collecott, Paterson, Animals
 * 2015;5:332-348, doi 10.3390/ani5020332, and our judgement; docs/priorities.md tells which is
 * which.
 */
final class Weights {
  static final long ONE = 1_000_000;

  private static final PerSpecies LOST_WITHIN_A_YEAR = new PerSpecies(20_000, 30_000, 10_000);
  private static final PerSpecies NOT_REACHED_CLEAN = new PerSpecies(70_000, 250_000, 160_000);
  private static final PerSpecies NOT_REACHED_PROBLEM = new PerSpecies(300_000, 590_000, 445_000);
  private static final PerSpecies NOT_RECLAIMED_NO_CHIP = new PerSpecies(630_000, 950_000, 790_000);

  /** Of two registrations that differ, one may be right. */
  static final long ONE_OF_TWO = 500_000;

  /** A stranger who registered after our last handover may be the rightful one. */
  static final long OUR_RECORD = 500_000;

  /** Of two people who may have the animal, the registered one may. */
  static final long CUSTODY_OPEN = 500_000;

  /** A chip that one reader missed may answer another. */
  static final long READ_ELSEWHERE = 500_000;

  /** Most chips that nobody has read for a year still answer. */
  static final long NO_SIGN_OF_HARM = 50_000;

  /** A detail other than the phone is wrong: the phone may still be answered. */
  static final long NO_PHONE_DIFFERS = 250_000;

  /** Whoever reads the number may still ask the registry that has it. */
  static final long ASKED_ELSEWHERE = 250_000;

  /** A reader that knows no older number may not show it; most show both. */
  static final long NOT_READ = 100_000;

  /** Numbers of a supply that nobody speaks of: most are in the box still. */
  static final long STILL_IN_THE_BOX = 100_000;

  /** Other records of the animal, under its right number, may still lead home. */
  static final long OTHER_RECORDS = 500_000;

  /** The record found its animal all the same, as long as other records stay as they are. */
  static final long NUMBER_FOUND = 100_000;

  /** A hand-over was not long ago: the animal doesn't know its new home yet. */
  static final long RECENT_HAND_OVER = 2_000_000;

  /** While a stray's owner is waited for, a call can still bring it home; later it may not. */
  static final long STRAY_HOLD = 2_000_000;

  private Weights() {}

  /** A weight that depends on the kind of animal. */
  private record PerSpecies(long dog, long cat, long other) {
    long of(Species species) {
      return switch (species) {
        case DOG -> dog;
        case CAT -> cat;
        case RABBIT, FERRET, HORSE, BIRD, OTHER, UNSTATED -> other;
      };
    }
  }

  /** Whether the animal is lost now, whatever its hand-over. */
  static boolean isLost(FindingKind kind) {
    return kind == FindingKind.FOUND_WAITING || kind == FindingKind.LOST_UNREACHABLE;
  }

  /**
   * The chance that the animal is lost within a year: some are lost now, and a dead one can't be.
   */
  static long lost(FindingKind kind, Species species) {
    if (kind == FindingKind.REGISTERED_AFTER_DEATH) {
      return 0;
    }
    return isLost(kind) ? ONE : LOST_WITHIN_A_YEAR.of(species);
  }

  /** The chance that the registered contact fails to bring it home. */
  static long contactFails(FindingKind kind, Species species) {
    return switch (kind) {
      case FOUND_WAITING -> NOT_REACHED_CLEAN.of(species);
      case LOST_UNREACHABLE,
          PLACEHOLDER_CONTACT,
          MISTYPED_REGISTRATION,
          PREPAID_UNUSED,
          UNREGISTERED,
          TRAIL_ENDS_AT_PURCHASER,
          NOT_DETECTED,
          REGISTERED_ELSEWHERE,
          NON_ISO_ONLY,
          STOCK_UNACCOUNTED ->
          NOT_RECLAIMED_NO_CHIP.of(species);
      case NUMBER_ON_TWO_ANIMALS,
          CUSTODY_UNCLEAR,
          CHIPS_DIVERGE,
          CONTACT_BEHIND,
          RECORDS_BEHIND,
          REGISTRIES_DISAGREE,
          DETAILS_DIFFER,
          SCAN_OVERDUE,
          REGISTERED_AFTER_DEATH,
          NUMBER_DAMAGED ->
          NOT_REACHED_PROBLEM.of(species);
    };
  }
}
