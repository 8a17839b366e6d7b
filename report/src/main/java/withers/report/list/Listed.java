package withers.report.list;

import java.time.LocalDate;
import java.util.List;
import withers.organisation.Organisation;

/**
 * A list in figures, for when it is written and let go.
 *
 * @param organisation the reader
 * @param run the run's id
 * @param asOf the day that the run judged
 * @param size how many follow-ups are listed
 * @param fresh how many of them are new
 * @param settled how many the data closed since the reader's last mail, or since the run before
 * @param settledByPeople how many are not listed because a person settled them
 * @param backlogWaiting how many of the backlog are not listed yet
 * @param told references of what the reader knows of once it has the list, in order
 */
public record Listed(
    Organisation organisation,
    String run,
    LocalDate asOf,
    int size,
    int fresh,
    int settled,
    int settledByPeople,
    int backlogWaiting,
    List<String> told) {
  public Listed {
    told = List.copyOf(told);
  }

  /** How many of the listed are still open from before. */
  public int stillOpen() {
    return size - fresh;
  }
}
