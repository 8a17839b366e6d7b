package withers.rule;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.Set;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.history.Source;

/**
 * Live registrations name only strangers who were registered after our last handover: our own
 * record may be behind.
 */
final class RecordsBehind extends KeeperRule {

  @Override
  public FindingKind kind() {
    return FindingKind.RECORDS_BEHIND;
  }

  @Override
  Judgement judge(Dossier dossier, Keeper keeper) {
    Set<Standing> standings = dossier.standings(keeper);
    standings.remove(Standing.NOBODY);
    if (!standings.equals(EnumSet.of(Standing.LATER))) {
      return Judgement.CLEAR;
    }
    if (dossier.custody().isBeforeForgotten(keeper.since())) {
      return new Judgement.Undecided(Set.of()); // the stranger may be somebody from before
    }
    LocalDate registered = dossier.latestRegistrationDay().orElseThrow();
    Set<NotJudged> lacking = new HashSet<>(dossier.lagging(registered));
    lacking.addAll(ownLag(dossier, keeper, registered));
    return unlessLacking(lacking, () -> new Judgement.Holds(keeper.start()));
  }

  private static Set<NotJudged> ownLag(Dossier dossier, Keeper keeper, LocalDate registered) {
    Source own = dossier.cast().sources().get(keeper.start().source());
    return dossier.registries().lagging(dossier.animal(), own, registered);
  }
}
