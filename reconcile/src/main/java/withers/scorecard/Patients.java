package withers.scorecard;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.custody.Cast;
import withers.fact.Fact;
import withers.fact.Subject;
import withers.finding.Who;
import withers.history.Animal;
import withers.history.Stated;
import withers.history.Statement;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.registration.Registries;
import withers.rule.Dossier;
import withers.run.AllAnimals;
import withers.supply.Supplies;

/** Makes a group's patients of animals, and of records that no animal took. */
record Patients(Group group, Registries registries, Supplies supplies)
    implements AllAnimals.Question<Known> {

  @Override
  public boolean concerns(Statement statement) {
    return statement.listed() && group.isOwn(statement.source());
  }

  @Override
  public Stream<Known> ask(Animal animal) {
    ClinicRecords records = ClinicRecords.of(group, animal);
    Dossier dossier = Dossier.of(animal, registries, supplies);
    boolean dead = dossier.deaths().isDead();
    Optional<Patient> patient = dead ? Optional.empty() : patient(dossier, records);
    return Stream.of(new Known(dead, patient, naming(records), heard(animal)));
  }

  /** A record that no animal took. */
  Known unplaced(ClinicRecords records) {
    boolean dead = records.tellOfDeath();
    Optional<Patient> patient =
        dead
            ? Optional.empty()
            : records.latest(group.clinics()).map(sight -> unplaced(sight, records));
    return new Known(dead, patient, naming(records), sources(records.statements().stream()));
  }

  private Optional<Patient> patient(Dossier dossier, ClinicRecords records) {
    Home home = Home.of(records.sights());
    return records
        .latest(home.clinics())
        .filter(sight -> group.clinics().contains(sight.clinic()))
        .or(() -> records.latest(group.clinics()))
        .map(sight -> patient(sight, home, dossier, records));
  }

  private Patient patient(
      ClinicRecords.Sight sight, Home home, Dossier dossier, ClinicRecords records) {
    Reachability.Answer answer =
        records.haveNumber()
            ? new Reachability(group, dossier, records).answer(home)
            : new Reachability.Answer(Reach.NO_NUMBER);
    return new Patient(
        sight.clinic(),
        sight.record().source(),
        sight.record().key(),
        Optional.of(dossier.animal().anchor()),
        records.haveNumber(),
        records.scanned(),
        isVisiting(sight.clinic(), records),
        implanted(dossier.animal()),
        answer.reach(),
        answer.lacking());
  }

  private static Patient unplaced(ClinicRecords.Sight sight, ClinicRecords records) {
    return new Patient(
        sight.clinic(),
        sight.record().source(),
        sight.record().key(),
        Optional.empty(),
        false,
        records.scanned(),
        false,
        Told.NOT_KNOWN,
        Reach.NO_NUMBER,
        Set.of());
  }

  private boolean isVisiting(OrganisationId clinic, ClinicRecords records) {
    return records.sights().stream()
        .map(ClinicRecords.Sight::clinic)
        .anyMatch(other -> !other.equals(clinic) && group.clinics().contains(other));
  }

  /** Whether the group put a chip in; somebody else did when only others are named. */
  private Told implanted(Animal animal) {
    List<Who> implanters =
        animal
            .stating(Fact.Implanted.class)
            .map(s -> registries.cast().who(s, ((Fact.Implanted) s.fact()).implanter()))
            .filter(Cast::isNamed)
            .toList();
    if (implanters.isEmpty()) {
      return Told.NOT_KNOWN;
    }
    return implanters.stream().anyMatch(this::isOfGroup) ? Told.YES : Told.NO;
  }

  private boolean isOfGroup(Who who) {
    return who instanceof Who.Organisation clinic && group.clinics().contains(clinic.id());
  }

  private Set<SourceId> naming(ClinicRecords records) {
    return sources(
        records.statements().stream()
            .filter(stated -> group.isOwn(stated.source()))
            .filter(Patients::namesAnimal));
  }

  private static boolean namesAnimal(Stated stated) {
    return stated.fact() instanceof Fact.Linked
        || stated.event().subject() instanceof Subject.Animal;
  }

  /** Everybody who speaks of it, and the registries that may hold it, speaking or not. */
  private Set<SourceId> heard(Animal animal) {
    Set<SourceId> heard =
        new HashSet<>(sources(animal.statements().stream().map(Statement::stated)));
    registries.mayHold(animal).stream()
        .flatMap(registry -> group.sources().ofRegistry(registry).stream())
        .forEach(source -> heard.add(source.description().id()));
    return heard;
  }

  private static Set<SourceId> sources(Stream<Stated> stated) {
    return stated.map(Stated::source).collect(Collectors.toSet());
  }
}
