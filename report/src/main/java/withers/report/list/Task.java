package withers.report.list;

import java.util.List;
import withers.finding.FindingKind;

/**
 * Follow-ups of one band in which the same has to be done.
 *
 * @param caution what to take care of with all of them
 */
public record Task(FindingKind kind, String caution, List<FollowUp> followUps) {
  public Task {
    followUps = List.copyOf(followUps);
  }
}
