package withers.rule;

import withers.finding.FindingKind;

/** Nobody registered the animal, though a registration was paid for with one of its chips. */
final class PrepaidUnused extends KeeperRule {

  private final Unregistered unregistered = new Unregistered();

  @Override
  public FindingKind kind() {
    return FindingKind.PREPAID_UNUSED;
  }

  @Override
  Judgement judge(Dossier dossier, Keeper keeper) {
    return dossier.prepaid().findAny().isPresent()
        ? unregistered.judge(dossier, keeper)
        : Judgement.CLEAR;
  }
}
