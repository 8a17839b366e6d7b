package withers.trace;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import withers.chip.ChipNumber;
import withers.chip.OneSlip;
import withers.contacts.People;
import withers.custody.Cast;
import withers.fact.Fact;
import withers.fact.Species;
import withers.history.Animal;
import withers.history.History;
import withers.history.Periods;
import withers.history.Scope;
import withers.history.Sources;
import withers.history.Statement;
import withers.id.OrganisationId;
import withers.log.LogSnapshot;
import withers.organisation.Directory;
import withers.registration.Registries;
import withers.rule.Dossier;
import withers.run.AnimalReader;
import withers.run.DiscretionReader;
import withers.run.PartitionReader;
import withers.run.SettlementReader;
import withers.settled.Settlements;
import withers.supply.Supplies;
import withers.trace.Trace.Registered;
import withers.trace.Trace.Step;
import withers.trace.Trace.Supply;

/** Looks one number up. */
public final class Tracer {

  /** Near numbers that are told; more would help nobody. */
  private static final int MOST_NEAR = 5;

  private final LogSnapshot log;
  private final Sources sources;
  private final Settlements settlements;
  private final Registries registries;
  private final Wording wording;
  private final OrganisationId coordinator;

  /**
   * A tracer over a log.
   *
   * @param coordinator who is called about numbers of which nothing is told
   * @param periods as for a run
   */
  public Tracer(
      LogSnapshot log,
      Scope scope,
      Directory directory,
      OrganisationId coordinator,
      People people,
      Periods periods) {
    this.coordinator = coordinator;
    this.log = log;
    this.sources = Sources.of(log.markers(), scope);
    this.settlements = SettlementReader.read(log, scope);
    Cast cast = new Cast(people, sources, settlements, DiscretionReader.read(log));
    this.registries = new Registries(directory, cast, periods);
    this.wording = new Wording(directory, cast);
  }

  public Wording wording() {
    return wording;
  }

  public Trace trace(ChipNumber number) {
    Animal animal = new AnimalReader(log, sources, settlements).read(number);
    if (registries.cast().discretion().covers(animal)) {
      return Trace.silent(number, coordinator);
    }
    Supplies supplies = Supplies.read(log, registries.cast());
    Dossier dossier = Dossier.of(animal, registries, supplies);
    List<Supply> supplied = supplies.naming(number).map(Tracer::supply).toList();
    boolean isKnown = !animal.statements().isEmpty();
    return new Trace(
        number,
        animal.chips(),
        described(animal).map(Fact.Described::species).orElse(Species.UNSTATED),
        described(animal).flatMap(Fact.Described::name),
        steps(animal),
        registrations(dossier),
        Doubts.of(dossier, wording),
        new NextCall(dossier, supplied).find(),
        supplied,
        isKnown ? List.of() : oneSlipAway(number),
        List.copyOf(registries.mayHold(animal)),
        false);
  }

  private List<Step> steps(Animal animal) {
    return animal.statements().stream().flatMap(s -> step(s).stream()).toList();
  }

  private Optional<Step> step(Statement statement) {
    return wording
        .of(statement)
        .map(says -> new Step(statement, says, registries.cast().organisation(statement)));
  }

  private static List<Registered> registrations(Dossier dossier) {
    return dossier.live().stream()
        .map(live -> new Registered(live.chip(), live.registry(), live.day(), live.primary()))
        .toList();
  }

  private static Optional<Fact.Described> described(Animal animal) {
    return animal
        .stating(Fact.Described.class)
        .max(Comparator.comparing(Statement::firstStated).thenComparing(Statement.BY_DAY))
        .map(statement -> (Fact.Described) statement.fact());
  }

  private static Supply supply(withers.supply.Supply supply) {
    return new Supply(supply.range(), supply.purchaser(), supply.day(), supply.prepaid());
  }

  private List<ChipNumber> oneSlipAway(ChipNumber number) {
    Set<ChipNumber> near =
        OneSlip.neighbours(number).mapToObj(ChipNumber::ofPacked).collect(Collectors.toSet());
    return new PartitionReader(log, sources)
        .histories(near).stream()
            .filter(history -> !history.statements().isEmpty())
            .map(History::chip)
            .sorted()
            .limit(MOST_NEAR)
            .toList();
  }
}
