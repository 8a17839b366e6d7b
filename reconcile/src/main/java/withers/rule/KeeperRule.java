package withers.rule;

import java.util.Set;
import java.util.function.Supplier;
import withers.finding.NotJudged;

/**
 * A rule about animals with a keeper, for whom registries are current since the start. While
 * custody is in doubt it can't be judged.
 */
abstract class KeeperRule implements Rule {

  @Override
  public final Judgement judge(Dossier dossier) {
    if (dossier.custody().isInDoubt()) {
      return new Judgement.Undecided(Set.of());
    }
    return dossier
        .keeper()
        .map(keeper -> unlessLacking(keeper.lacking(), () -> judge(dossier, keeper)))
        .orElse(Judgement.CLEAR);
  }

  abstract Judgement judge(Dossier dossier, Keeper keeper);

  static Judgement unlessLacking(Set<NotJudged> lacking, Supplier<Judgement> judgement) {
    return lacking.isEmpty() ? judgement.get() : new Judgement.Undecided(lacking);
  }
}
