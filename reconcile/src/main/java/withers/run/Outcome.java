package withers.run;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import withers.finding.Finding;
import withers.finding.NotJudged;
import withers.rule.Assessment;

/**
 * What was found, before follow-ups are looked at.
 *
 * @param animals how many animals the log tells of
 * @param assessments those that say something, in no order
 * @param damaged findings about records with a damaged number
 */
public record Outcome(long animals, List<Assessment> assessments, List<Finding> damaged) {

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
    damaged = List.copyOf(damaged);
  }

  /** In total order: band, then harm descending, then case key. */
  public List<Finding> findings() {
    Stream<Finding> ofAnimals = assessments.stream().flatMap(a -> a.finding().stream());
    return Stream.concat(ofAnimals, damaged.stream()).sorted(FINDINGS).toList();
  }

  /** In order of registry, reason and anchor. */
  public List<NotJudged> notJudged() {
    return assessments.stream().flatMap(a -> a.notJudged().stream()).sorted(NOT_JUDGED).toList();
  }
}
