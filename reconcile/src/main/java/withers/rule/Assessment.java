package withers.rule;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import withers.chip.ChipNumber;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.finding.OpenQuestion;

/**
 * What the rules say about one animal.
 *
 * @param chips all its chips, in natural order
 * @param finding the first kind that applies
 * @param undecided kinds that could not be judged, or that hold but are hidden by the finding:
 *     their follow-ups neither open nor close
 * @param notJudged what was lacking
 * @param question what a human may be able to tell, whatever was found
 * @param settled findings that are held back, because somebody found them right as they are
 */
public record Assessment(
    List<ChipNumber> chips,
    Optional<Finding> finding,
    Set<FindingKind> undecided,
    Set<NotJudged> notJudged,
    Optional<OpenQuestion> question,
    List<Finding> settled) {
  public Assessment {
    chips = List.copyOf(chips);
    undecided = Set.copyOf(undecided);
    notJudged = Set.copyOf(notJudged);
    settled = List.copyOf(settled);
  }

  /** The animal's lowest chip number. */
  public ChipNumber anchor() {
    return chips.get(0);
  }

  /** Whether there is nothing to say. */
  public boolean isClear() {
    return finding.isEmpty()
        && undecided.isEmpty()
        && notJudged.isEmpty()
        && question.isEmpty()
        && settled.isEmpty();
  }
}
