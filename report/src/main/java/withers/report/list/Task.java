package withers.report.list;

import java.util.List;
import withers.finding.FindingKind;

/**
 * Follow-ups of one band in which the same has to be done.
 *
 * @param caution what to take care of with all of them
 * @param steps what to do once for all of them, in order; empty when each says so itself
 */
public record Task(FindingKind kind, String caution, List<String> steps, List<FollowUp> followUps) {

  /** How many are told on a page when there is one thing to do for all; a sheet has each. */
  static final int ROWS_SHOWN = 25;

  /**
   * How many are told on a page when each says what to do. Nobody works through more on one; more
   * would make it slow to open, and too much for a mail.
   */
  static final int SHOWN = 200;

  public Task {
    steps = List.copyOf(steps);
    followUps = List.copyOf(followUps);
  }

  /** Whether one thing is to be done for all of them, so that a row for each is enough. */
  public boolean isDoneOnce() {
    return !steps.isEmpty();
  }

  /** Those that a page tells of. */
  public List<FollowUp> shown() {
    return followUps.subList(0, Math.min(isDoneOnce() ? ROWS_SHOWN : SHOWN, followUps.size()));
  }

  /** How many more there are, in the sheet only. */
  public int more() {
    return followUps.size() - shown().size();
  }
}
