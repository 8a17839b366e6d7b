package withers.cases;

import java.time.LocalDate;
import java.util.Optional;

/**
 * What a person found out about a follow-up, so that the same is not asked again. People's details
 * don't belong here: neither in the role nor in the reason.
 *
 * @param number counts up with the recording, from 1, each used once: of several that speak of the
 *     same the one with the highest number counts
 * @param recorded when it was written down; a run by what was known before leaves it out
 * @param day when the person found out; a run as of an earlier day leaves it out
 * @param until the last day on which it holds; empty when no end is known
 * @param by in which role, never a person's name
 * @param reason in the person's own words
 */
public record Settled(
    long number,
    CaseKey key,
    LocalDate recorded,
    LocalDate day,
    Optional<LocalDate> until,
    String by,
    String reason,
    Settlement says)
    implements CaseEvent {

  /** The same of a follow-up that goes by another key now. */
  public Settled under(CaseKey current) {
    return new Settled(number, current, recorded, day, until, by, reason, says);
  }

  /** Whether it has an end, and the end has passed. */
  public boolean isOver(LocalDate asOf) {
    return until.filter(asOf::isAfter).isPresent();
  }

  /** Whether both say the same, whenever they were recorded. */
  public boolean saysTheSame(Settled other) {
    return equals(
        new Settled(
            number,
            other.key,
            recorded,
            other.day,
            other.until,
            other.by,
            other.reason,
            other.says));
  }
}
