package withers.rule;

import java.time.LocalDate;
import withers.finding.FindingKind;
import withers.history.Statement;
import withers.registration.Covering;

/** No chip has a live registration, and registries' silence covers every one of them. */
final class Unregistered extends KeeperRule {

  @Override
  public FindingKind kind() {
    return FindingKind.UNREGISTERED;
  }

  @Override
  Judgement judge(Dossier dossier, Keeper keeper) {
    return dossier.live().isEmpty()
        ? ifCovered(dossier, keeper.since(), keeper.start())
        : Judgement.CLEAR;
  }

  /** Holds when every chip is covered since a day; when not, it can't be judged. */
  static Judgement ifCovered(Dossier dossier, LocalDate since, Statement acting) {
    Covering covering = dossier.registries().covering(dossier.animal(), since);
    if (covering.isHeld()) {
      return Judgement.CLEAR;
    }
    return covering.isFull()
        ? new Judgement.Holds(acting)
        : new Judgement.Undecided(covering.lacking());
  }
}
