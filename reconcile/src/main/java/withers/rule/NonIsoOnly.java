package withers.rule;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.chip.ChipNumber.Kind;
import withers.custody.Visit;
import withers.finding.FindingKind;
import withers.history.Statement;

/** The animal has a keeper who comes to a clinic, and no chip that every reader reads. */
final class NonIsoOnly implements Rule {

  /** Days for which a visit shows that the animal still comes: three years (our judgement). */
  static final int DAYS = 1_095;

  @Override
  public FindingKind kind() {
    return FindingKind.NON_ISO_ONLY;
  }

  @Override
  public Judgement judge(Dossier dossier) {
    boolean concerns =
        dossier.keeper().isPresent()
            && dossier.animal().chips().stream().noneMatch(chip -> chip.kind() == Kind.ISO);
    return concerns
        ? lastVisit(dossier)
            .map(Visit::statement)
            .map(visit -> unlessUnheard(dossier, visit))
            .orElse(Judgement.CLEAR)
        : Judgement.CLEAR;
  }

  private static Judgement unlessUnheard(Dossier dossier, Statement visit) {
    return KeeperRule.unlessLacking(
        dossier.unheard(dossier.speakers()), () -> new Judgement.Holds(visit));
  }

  private static Optional<Visit> lastVisit(Dossier dossier) {
    List<Visit> visits = dossier.custody().visits();
    LocalDate from = dossier.asOf().minusDays(DAYS);
    return visits.isEmpty()
        ? Optional.empty()
        : Optional.of(visits.get(visits.size() - 1))
            .filter(visit -> !visit.statement().day().isBefore(from));
  }
}
