package withers.cases;

import java.time.LocalDate;

/**
 * One step in the life of a follow-up.
 *
 * @param asOf the day that the run judged
 * @param run the run that saw it
 */
public record CaseStep(CaseKey key, Step step, LocalDate asOf, String run) implements CaseEvent {

  /** What happened to the follow-up. */
  public enum Step {
    /** A run found it for the first time, or again after it was closed. */
    OPENED,
    /** A run no longer lists it: the data closed it, or a person settled it. */
    CLOSED
  }
}
