package withers.rule;

import java.util.List;
import java.util.Set;
import withers.custody.Handover;
import withers.finding.FindingKind;

/**
 * Records tell of a death, and others of the animal's life after it; or the last day's handovers
 * leave it with different people.
 */
final class CustodyUnclear implements Rule {

  @Override
  public FindingKind kind() {
    return FindingKind.CUSTODY_UNCLEAR;
  }

  @Override
  public Judgement judge(Dossier dossier) {
    if (dossier.deaths().areAllContradicted()) {
      return new Judgement.Holds(dossier.deaths().contradicted().get(0));
    }
    return dossier.custody().isInDoubt() ? unlessForgotten(dossier) : Judgement.CLEAR;
  }

  /** Two may have been one, if one of them can't be told any more. */
  private static Judgement unlessForgotten(Dossier dossier) {
    return dossier.custody().isLastForgotten() ? new Judgement.Undecided(Set.of()) : last(dossier);
  }

  private static Judgement last(Dossier dossier) {
    List<Handover> candidates = dossier.custody().trail().last().candidates();
    return new Judgement.Holds(candidates.get(candidates.size() - 1).statement());
  }
}
