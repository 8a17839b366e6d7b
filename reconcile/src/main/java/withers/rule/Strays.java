package withers.rule;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.custody.Versions.Version;
import withers.fact.Fact;
import withers.fact.Species;
import withers.finding.Who;
import withers.history.Animal;
import withers.registration.LiveRegistration;
import withers.slip.Candidates;
import withers.slip.Slip;

/** Registrations that no animal is known for, and animals that no registration is known for. */
record Strays(Dossier dossier) {

  private static final Set<Species> ANY = Set.of(Species.UNSTATED, Species.OTHER);

  /** Puts aside what may belong together with another number. */
  void putAside(Candidates.Part part) {
    if (dossier.animal().statements().stream().allMatch(dossier.cast()::isRegistrysWord)) {
      putStrayAside(part);
    } else if (dossier.live().isEmpty()) {
      dossier
          .keeper()
          .filter(keeper -> keeper.lacking().isEmpty())
          .ifPresent(keeper -> putCarriedAside(keeper, part));
    }
  }

  private void putStrayAside(Candidates.Part part) {
    if (dossier.animal().chips().size() == 1) {
      part.addStray(dossier.animal().anchor(), people(primaries()).map(Who.Person::reference));
      part.addToldStray(
          dossier.animal().anchor(), people(primaries()).flatMapToLong(dossier.cast()::toldSigns));
    }
  }

  private void putCarriedAside(Keeper keeper, Candidates.Part part) {
    List<Who.Person> versions = people(keeper.versions().all().stream().map(Version::who)).toList();
    spokenOf()
        .forEach(
            number -> {
              part.addCarried(number, versions.stream().map(Who.Person::reference));
              part.addToldCarried(
                  number, versions.stream().flatMapToLong(dossier.cast()::toldSigns));
            });
  }

  private Stream<Who> primaries() {
    return dossier.live().stream().map(LiveRegistration::primary);
  }

  private static Stream<Who.Person> people(Stream<Who> all) {
    return all.flatMap(who -> who.person().stream());
  }

  /** Its numbers of which somebody speaks who is no registry. */
  private Stream<ChipNumber> spokenOf() {
    return dossier.animal().statements().stream()
        .filter(statement -> !dossier.cast().isRegistrysWord(statement))
        .map(withers.history.Statement::chip)
        .distinct();
  }

  /**
   * The registration of a stray number that may be meant for an animal, by the people and the
   * species that records name with both.
   *
   * @param slip a stray number here, and one that the animal carries
   */
  Optional<LiveRegistration> meantFor(Dossier animal, Slip slip) {
    return speciesAgree(animal.animal(), slip)
        ? animal.keeper().flatMap(this::registrationOf)
        : Optional.empty();
  }

  private Optional<LiveRegistration> registrationOf(Keeper keeper) {
    return dossier.live().stream()
        .filter(one -> keeper.versions().verdict(one.primary()).isSamePerson())
        .findFirst();
  }

  private boolean speciesAgree(Animal animal, Slip slip) {
    Set<Species> stated = species(dossier.animal(), slip.stray());
    return stated.isEmpty()
        || species(animal, slip.carried()).stream().allMatch(one -> stated.equals(Set.of(one)));
  }

  private static Set<Species> species(Animal animal, ChipNumber number) {
    return animal
        .stating(Fact.Described.class)
        .filter(statement -> statement.chip().equals(number))
        .map(statement -> ((Fact.Described) statement.fact()).species())
        .filter(species -> !ANY.contains(species))
        .collect(Collectors.toSet());
  }
}
