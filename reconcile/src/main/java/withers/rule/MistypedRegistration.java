package withers.rule;

import withers.finding.FindingKind;

/**
 * Nobody registered the animal, but its keeper is registered under a number one slip away that no
 * animal carries. Which number that is, is known when all animals are.
 */
final class MistypedRegistration extends KeeperRule {

  @Override
  public FindingKind kind() {
    return FindingKind.MISTYPED_REGISTRATION;
  }

  @Override
  Judgement judge(Dossier dossier, Keeper keeper) {
    return dossier.stray().isPresent() ? new Judgement.Holds(keeper.start()) : Judgement.CLEAR;
  }
}
