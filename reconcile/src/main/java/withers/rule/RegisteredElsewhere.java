package withers.rule;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import withers.chip.ChipNumber;
import withers.finding.FindingKind;
import withers.id.OrganisationId;
import withers.registration.Covering;
import withers.registration.LiveRegistration;

/**
 * The right person is registered, but with registries that nobody would ask about such a number;
 * those that one would ask know nothing.
 */
final class RegisteredElsewhere extends KeeperRule {

  @Override
  public FindingKind kind() {
    return FindingKind.REGISTERED_ELSEWHERE;
  }

  @Override
  Judgement judge(Dossier dossier, Keeper keeper) {
    List<Covering> silences =
        dossier.animal().chips().stream()
            .filter(chip -> isElsewhere(chip, dossier, keeper))
            .map(chip -> silence(chip, dossier, keeper))
            .filter(silence -> !silence.isHeld())
            .toList();
    if (silences.stream().anyMatch(Covering::isFull)) {
      return new Judgement.Holds(keeper.start());
    }
    return silences.isEmpty()
        ? Judgement.CLEAR
        : new Judgement.Undecided(Covering.all(silences).lacking());
  }

  /** Whether a registration of the number is right, and with none of those that are asked. */
  private static boolean isElsewhere(ChipNumber chip, Dossier dossier, Keeper keeper) {
    List<LiveRegistration> live =
        dossier.live().stream().filter(one -> one.chip().equals(chip)).toList();
    Set<OrganisationId> with =
        live.stream().map(LiveRegistration::registry).collect(Collectors.toSet());
    Set<OrganisationId> asked = dossier.registries().givenByRange(chip);
    return !asked.isEmpty()
        && asked.stream().noneMatch(with::contains)
        && live.stream().anyMatch(one -> dossier.standing(one, keeper).isAcceptable());
  }

  private static Covering silence(ChipNumber chip, Dossier dossier, Keeper keeper) {
    Set<OrganisationId> asked = dossier.registries().givenByRange(chip);
    return dossier.registries().covering(dossier.animal(), chip, asked, keeper.since());
  }
}
