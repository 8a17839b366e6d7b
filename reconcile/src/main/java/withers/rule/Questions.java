package withers.rule;

import java.util.List;
import java.util.Optional;
import withers.finding.OpenQuestion;
import withers.finding.Who;
import withers.registration.LiveRegistration;

/**
 * What a human may be able to tell where the records can't: is the registered contact the keeper?
 */
record Questions(Dossier dossier) {

  /**
   * Open when registries are current, no registration plainly names an acceptable primary, and one
   * names somebody who may be the keeper. Whoever was forgotten is not asked about, nor who is
   * reached by a phone or e-mail of the keeper's: that leads to the right place.
   */
  Optional<OpenQuestion> open() {
    if (dossier.deaths().isDead() || dossier.custody().isInDoubt()) {
      return Optional.empty();
    }
    return dossier
        .keeper()
        .filter(keeper -> !keeper.versions().areForgotten())
        .filter(keeper -> !dossier.standings(keeper).contains(Standing.ACCEPTABLE))
        .flatMap(keeper -> about(keeper, untold(keeper)));
  }

  private List<LiveRegistration> untold(Keeper keeper) {
    return dossier.live().stream()
        .filter(one -> dossier.standing(one, keeper) == Standing.UNTOLD)
        .filter(one -> one.primary().person().filter(dossier.cast().people()::isKnown).isPresent())
        .filter(one -> keeper.versions().all().stream().noneMatch(v -> isReachedAs(v.who(), one)))
        .toList();
  }

  private boolean isReachedAs(Who version, LiveRegistration registration) {
    return dossier.cast().people().areReachedAlike(version, registration.primary());
  }

  private Optional<OpenQuestion> about(Keeper keeper, List<LiveRegistration> untold) {
    return keeper
        .who()
        .person()
        .filter(person -> !untold.isEmpty() && keeper.lacking().isEmpty())
        .map(person -> write(keeper, person, untold));
  }

  private OpenQuestion write(Keeper keeper, Who.Person person, List<LiveRegistration> untold) {
    Looks looks = new Looks(dossier);
    var asked = dossier.cast().organisation(keeper.start());
    return new OpenQuestion(
        dossier.animal().chips(),
        looks.species(),
        looks.name(asked),
        asked,
        keeper.start().key(),
        person,
        keeper.since(),
        untold.stream().map(new Registered(dossier)::of).toList());
  }
}
