package withers.rule;

import withers.finding.FindingKind;
import withers.registration.Covering;

/** No chip has a live registration, and registries' silence covers every one of them. */
final class Unregistered extends KeeperRule {

  @Override
  public FindingKind kind() {
    return FindingKind.UNREGISTERED;
  }

  @Override
  Judgement judge(Dossier dossier, Keeper keeper) {
    if (!dossier.live().isEmpty()) {
      return Judgement.CLEAR;
    }
    Covering covering = dossier.registries().covering(dossier.animal(), keeper.since());
    if (covering.isHeld()) {
      return Judgement.CLEAR;
    }
    return covering.isFull()
        ? new Judgement.Holds(keeper.start())
        : new Judgement.Undecided(covering.lacking());
  }
}
