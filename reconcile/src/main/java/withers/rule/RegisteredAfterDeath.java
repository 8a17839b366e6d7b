package withers.rule;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.history.Source;
import withers.history.Statement;
import withers.registration.LiveRegistration;

/**
 * The animal is dead, and a registry that could know by now still has it. The only kind for the
 * dead.
 */
final class RegisteredAfterDeath implements Rule {

  @Override
  public FindingKind kind() {
    return FindingKind.REGISTERED_AFTER_DEATH;
  }

  @Override
  public Judgement judge(Dossier dossier) {
    return death(dossier).map(death -> judge(death, dossier)).orElse(Judgement.CLEAR);
  }

  /** The first death that stands and that somebody else than a registry states. */
  private static Optional<Statement> death(Dossier dossier) {
    return dossier.deaths().standing().stream()
        .filter(death -> !dossier.cast().isRegistry(death))
        .findFirst();
  }

  private static Judgement judge(Statement death, Dossier dossier) {
    Set<NotJudged> lacking = new HashSet<>();
    for (LiveRegistration live : dossier.live()) {
      Set<NotJudged> lag = lag(live, death, dossier);
      if (lag.isEmpty()) {
        return new Judgement.Holds(death);
      }
      lacking.addAll(lag);
    }
    return lacking.isEmpty() ? Judgement.CLEAR : new Judgement.Undecided(lacking);
  }

  private static Set<NotJudged> lag(LiveRegistration live, Statement death, Dossier dossier) {
    Source source = dossier.cast().sources().get(live.statement().source());
    return dossier
        .registries()
        .actingBy(dossier.cast().organisation(death))
        .lagging(dossier.animal(), source, death.firstStated());
  }
}
