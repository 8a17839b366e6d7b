package withers.finding;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import withers.cases.CaseKey;

/**
 * What is found about records: it stands beside the animals' rows.
 *
 * @param findings in no order
 * @param undecided follow-ups about what could not be judged: they neither open nor close
 * @param notJudged what was lacking
 */
public record RecordFindings(
    List<Finding> findings, Set<CaseKey> undecided, Set<NotJudged> notJudged) {
  public RecordFindings {
    findings = List.copyOf(findings);
    undecided = Set.copyOf(undecided);
    notJudged = Set.copyOf(notJudged);
  }

  /** These, and more findings. */
  public RecordFindings with(Collection<Finding> others) {
    List<Finding> all = new ArrayList<>(findings);
    all.addAll(others);
    return new RecordFindings(all, undecided, notJudged);
  }
}
