package withers.rule;

import java.time.LocalDate;
import java.util.List;
import withers.contacts.Comparison;
import withers.contacts.Field;
import withers.finding.FindingKind;
import withers.matching.Verdict;

/** A live registration names the keeper, with other details than the newest that we know. */
final class DetailsDiffer extends KeeperRule {

  @Override
  public FindingKind kind() {
    return FindingKind.DETAILS_DIFFER;
  }

  @Override
  Judgement judge(Dossier dossier, Keeper keeper) {
    List<String> fields = differingFields(dossier, keeper);
    if (fields.isEmpty() || isSomebodyElse(dossier, keeper)) {
      return Judgement.CLEAR;
    }
    LocalDate known = keeper.versions().newestSince();
    LocalDate since = known.isAfter(keeper.since()) ? known : keeper.since();
    return unlessLacking(dossier.lagging(since), () -> new Judgement.Holds(keeper.start(), fields));
  }

  private static boolean isSomebodyElse(Dossier dossier, Keeper keeper) {
    return dossier.live().stream()
        .anyMatch(r -> keeper.versions().verdict(r.primary()) == Verdict.DIFFERENT);
  }

  private static List<String> differingFields(Dossier dossier, Keeper keeper) {
    return dossier.live().stream()
        .map(registration -> keeper.versions().withNewest(registration.primary()))
        .filter(comparison -> comparison.verdict() == Verdict.DETAILS_DIFFER)
        .map(Comparison::disagreeing)
        .flatMap(List::stream)
        .distinct()
        .sorted()
        .map(Field::word)
        .toList();
  }
}
