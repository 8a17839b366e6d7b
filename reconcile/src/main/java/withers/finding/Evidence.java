package withers.finding;

import java.time.LocalDate;
import withers.chip.ChipNumber;
import withers.fact.Slot;
import withers.id.OrganisationId;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * A statement that a finding rests on.
 *
 * @param part what it shows
 * @param day the day that it speaks of
 * @param chip the number that it was made about
 * @param firstStated the export date that said so first
 * @param where file and line, for people to look up; never part of what is compared
 */
public record Evidence(
    Part part,
    LocalDate day,
    ChipNumber chip,
    OrganisationId saidBy,
    SourceId source,
    RecordKey key,
    Slot slot,
    LocalDate firstStated,
    Who who,
    String where) {

  /** What a piece of evidence shows. */
  public enum Part {
    SUPPLIED,
    IMPLANTED,
    CAME_FROM,
    WENT_TO,
    HELD_BY,
    SEEN_WITH,
    REGISTERED_TO,
    PAIRED,
    FOUND,
    TAKEN_IN,
    LOOKED_UP,
    LOST,
    DESCRIBED,
    SCANNED,
    NOT_DETECTED,
    DIED
  }
}
