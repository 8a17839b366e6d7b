package withers.rule;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import withers.custody.Versions;
import withers.finding.FindingKind;
import withers.finding.Newer;
import withers.matching.Trait;
import withers.matching.Verdict;
import withers.registration.LiveRegistration;

/** A live registration names the keeper, with other details than the newest that we know. */
final class DetailsDiffer extends KeeperRule {

  /** Days within which a registration is of the same time as a record (our judgement). */
  private static final int AT_ONE_TIME = 14;

  @Override
  public FindingKind kind() {
    return FindingKind.DETAILS_DIFFER;
  }

  @Override
  Judgement judge(Dossier dossier, Keeper keeper) {
    List<LiveRegistration> differing = differing(dossier, keeper);
    if (differing.isEmpty() || isSomebodyElse(dossier, keeper)) {
      return Judgement.CLEAR;
    }
    if (keeper.versions().areForgotten() || isSomebodyForgotten(dossier)) {
      return new Judgement.Undecided(Set.of()); // there may be a newer version, or somebody else
    }
    LocalDate known = keeper.versions().newestSince();
    LocalDate since = known.isAfter(keeper.since()) ? known : keeper.since();
    return unlessLacking(dossier.lagging(since), () -> holds(differing, keeper));
  }

  private static boolean isSomebodyElse(Dossier dossier, Keeper keeper) {
    return dossier.live().stream()
        .anyMatch(r -> keeper.versions().verdict(r.primary()) == Verdict.DIFFERENT);
  }

  private static boolean isSomebodyForgotten(Dossier dossier) {
    return dossier.live().stream()
        .map(LiveRegistration::primary)
        .anyMatch(dossier.cast()::isForgotten);
  }

  private static List<LiveRegistration> differing(Dossier dossier, Keeper keeper) {
    return dossier.live().stream()
        .filter(one -> keeper.versions().verdictOnNewest(one.primary()) == Verdict.DETAILS_DIFFER)
        .toList();
  }

  private static Judgement holds(List<LiveRegistration> differing, Keeper keeper) {
    return new Judgement.Holds(keeper.start(), fields(differing, keeper), newer(differing, keeper));
  }

  private static List<String> fields(List<LiveRegistration> differing, Keeper keeper) {
    return differing.stream()
        .flatMap(one -> others(one, keeper))
        .sorted()
        .map(DetailsDiffer::field)
        .distinct()
        .toList();
  }

  /** By when the newest version was fresh, and the days of the registrations. */
  private static Newer newer(List<LiveRegistration> differing, Keeper keeper) {
    LocalDate fresh = keeper.versions().newestFreshness();
    LocalDate before = fresh.minusDays(AT_ONE_TIME);
    if (differing.stream().allMatch(one -> one.day().isBefore(before))) {
      return Newer.RECORDS;
    }
    LocalDate after = fresh.plusDays(AT_ONE_TIME);
    boolean later = differing.stream().allMatch(one -> one.day().isAfter(after));
    return later ? Newer.REGISTRATION : Newer.UNCLEAR;
  }

  private static Stream<Trait> others(LiveRegistration registration, Keeper keeper) {
    Versions versions = keeper.versions();
    return versions.cast().people().weigh(versions.newest().who(), registration.primary()).stream()
        .flatMap(weighing -> weighing.others().stream());
  }

  /** What a registry asks for in one piece or in two is one field here. */
  private static String field(Trait trait) {
    return trait.isName() ? "name" : trait.word();
  }
}
