package withers.run;

import java.util.Comparator;
import java.util.List;
import withers.finding.Finding;
import withers.finding.NotJudged;
import withers.rule.Assessment;

/**
 * What was found, before follow-ups are looked at.
 *
 * @param animals how many animals the log tells of
 * @param assessments those that say something, in no order
 */
public record Outcome(long animals, List<Assessment> assessments) {

  private static final Comparator<Finding> FINDINGS =
      Comparator.comparing((Finding finding) -> finding.priority().band())
          .thenComparing(finding -> finding.priority().harm(), Comparator.reverseOrder())
          .thenComparing(Finding::caseKey);

  private static final Comparator<NotJudged> NOT_JUDGED =
      Comparator.comparing(NotJudged::registry)
          .thenComparing(NotJudged::reason)
          .thenComparing(NotJudged::anchor);

  public Outcome {
    assessments = List.copyOf(assessments);
  }

  /** In total order: band, then harm descending, then case key. */
  public List<Finding> findings() {
    return assessments.stream().flatMap(a -> a.finding().stream()).sorted(FINDINGS).toList();
  }

  /** In order of registry, reason and anchor. */
  public List<NotJudged> notJudged() {
    return assessments.stream().flatMap(a -> a.notJudged().stream()).sorted(NOT_JUDGED).toList();
  }
}
