package withers.rule;

import java.util.Set;
import withers.finding.FindingKind;

/** No live registration names an acceptable primary, and one names somebody from before. */
final class ContactBehind extends KeeperRule {

  @Override
  public FindingKind kind() {
    return FindingKind.CONTACT_BEHIND;
  }

  @Override
  Judgement judge(Dossier dossier, Keeper keeper) {
    Set<Standing> standings = dossier.standings(keeper);
    boolean behind =
        standings.stream().noneMatch(Standing::isAcceptable)
            && standings.contains(Standing.FROM_BEFORE);
    return behind ? new Judgement.Holds(keeper.start()) : Judgement.CLEAR;
  }
}
