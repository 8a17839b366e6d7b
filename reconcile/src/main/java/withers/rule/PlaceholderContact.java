package withers.rule;

import java.util.Collections;
import java.util.Set;
import withers.custody.Cast;
import withers.finding.FindingKind;
import withers.registration.LiveRegistration;

/** Every live registration names nobody, or nobody whom it gives a way to reach. */
final class PlaceholderContact extends KeeperRule {

  /** The fields of which a registry that fills one in says something by leaving it empty. */
  private static final Set<String> WAYS = Set.of("phones", "emails");

  @Override
  public FindingKind kind() {
    return FindingKind.PLACEHOLDER_CONTACT;
  }

  @Override
  Judgement judge(Dossier dossier, Keeper keeper) {
    boolean holds =
        !dossier.live().isEmpty()
            && dossier.live().stream().allMatch(live -> leadsNowhere(live, dossier));
    return holds ? new Judgement.Holds(keeper.start()) : Judgement.CLEAR;
  }

  private static boolean leadsNowhere(LiveRegistration registration, Dossier dossier) {
    return !Cast.isNamed(registration.primary())
        || fillsIn(registration, dossier)
            && registration
                .primary()
                .person()
                .filter(dossier.cast().people()::isOnlyAName)
                .isPresent();
  }

  private static boolean fillsIn(LiveRegistration registration, Dossier dossier) {
    Set<String> filled =
        dossier
            .cast()
            .sources()
            .get(registration.statement().source())
            .description()
            .coverage()
            .filled();
    return !Collections.disjoint(filled, WAYS);
  }
}
