package withers.finding;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import withers.cases.CaseKey;

/**
 * What is found about records: it stands beside the animals' rows.
 *
 * @param findings in no order
 * @param undecided follow-ups about what could not be judged: they neither open nor close
 * @param notJudged what was lacking
 * @param settled findings that are held back, because somebody found them right as they are
 */
public record RecordFindings(
    List<Finding> findings,
    Set<CaseKey> undecided,
    Set<NotJudged> notJudged,
    List<Finding> settled) {
  public RecordFindings {
    findings = List.copyOf(findings);
    undecided = Set.copyOf(undecided);
    notJudged = Set.copyOf(notJudged);
    settled = List.copyOf(settled);
  }

  /** These, and more findings. */
  public RecordFindings with(Collection<Finding> others) {
    List<Finding> all = new ArrayList<>(findings);
    all.addAll(others);
    return new RecordFindings(all, undecided, notJudged, settled);
  }

  /** The same, without some of the findings: follow-ups about them neither open nor close. */
  public RecordFindings keeping(Predicate<Finding> isKept) {
    Set<CaseKey> open = new HashSet<>(undecided);
    findings.stream().filter(isKept.negate()).map(Finding::caseKey).forEach(open::add);
    return new RecordFindings(findings.stream().filter(isKept).toList(), open, notJudged, settled);
  }

  /** The same, with some of the findings held back. */
  public RecordFindings holdingBack(Predicate<Finding> isHeldBack) {
    Map<Boolean, List<Finding>> parts =
        findings.stream().collect(Collectors.partitioningBy(isHeldBack));
    return new RecordFindings(
        parts.getOrDefault(false, List.of()),
        undecided,
        notJudged,
        parts.getOrDefault(true, List.of()));
  }
}
