package withers.rule;

import java.util.Optional;
import withers.custody.Tenure;
import withers.fact.Fact;
import withers.finding.FindingKind;
import withers.history.Statement;

/**
 * The animal carries two or more chips, and registrations on two of them name different people, who
 * may not both be named.
 */
final class ChipsDiverge implements Rule {

  @Override
  public FindingKind kind() {
    return FindingKind.CHIPS_DIVERGE;
  }

  @Override
  public Judgement judge(Dossier dossier) {
    return Disputes.judge(
        dossier, (one, other) -> one.chip().compareTo(other.chip()) < 0, pairs -> acting(dossier));
  }

  private static Optional<Statement> acting(Dossier dossier) {
    return dossier
        .custodian()
        .map(Tenure::start)
        .or(() -> dossier.animal().stating(Fact.PairedWith.class).findFirst());
  }
}
