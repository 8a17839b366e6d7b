package withers.settling;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.cases.Settled;
import withers.cases.Settlement;
import withers.cases.Settlement.Relation;
import withers.chip.ChipNumber;
import withers.contacts.People;
import withers.custody.Cast;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.RunResult;
import withers.history.Periods;
import withers.history.Scope;
import withers.history.Sources;
import withers.history.Statement;
import withers.id.OrganisationId;
import withers.log.LogSnapshot;
import withers.organisation.Directory;
import withers.registration.Registries;
import withers.rule.Dossier;
import withers.rule.HeldBack;
import withers.rule.TurnsOn;
import withers.run.AnimalReader;
import withers.run.SettlementReader;
import withers.settled.Basis;
import withers.settled.Settlements;
import withers.supply.Supplies;

/** Makes what a person says of a run's follow-up into what is settled. */
public final class SettlementMaker {

  /** Records that a message names; more would help nobody. */
  private static final int MOST_NAMED = 5;

  private final RunResult run;
  private final LogSnapshot log;
  private final Sources sources;
  private final Directory directory;
  private final People people;
  private final Periods periods;
  private final Settlements heeded;
  private final Settlements ever;

  /**
   * @param run the run whose follow-ups are settled
   * @param periods as for the run
   */
  public SettlementMaker(
      RunResult run, LogSnapshot log, Directory directory, People people, Periods periods) {
    Scope scope = new Scope(run.asOf(), run.knownBy());
    this.run = run;
    this.log = log;
    this.sources = Sources.of(log.markers(), scope);
    this.directory = directory;
    this.people = people;
    this.periods = periods;
    this.heeded = SettlementReader.read(log, scope);
    this.ever = SettlementReader.read(log, Scope.asOf(LocalDate.MAX));
  }

  /**
   * Makes it.
   *
   * @param registry whose registration is meant, if there are several
   * @param record source and key of the record that is meant, as {@code source:key}
   * @throws CannotBeSettledException when the follow-up can't be settled so
   */
  public Settlement make(
      CaseKey key, Answer answer, Optional<OrganisationId> registry, Optional<String> record) {
    return switch (answer) {
      case RIGHT_AS_IT_IS -> rightAsItIs(key);
      case SAME_PERSON -> ofPeople(key, Relation.SAME_PERSON, registry);
      case SAME_HOUSEHOLD -> ofPeople(key, Relation.SAME_HOUSEHOLD, registry);
      case DIFFERENT_PEOPLE -> ofPeople(key, Relation.DIFFERENT_PEOPLE, registry);
      case ONE_ANIMAL -> oneAnimal(key);
      case MISTAKEN_NUMBER -> mistaken(key, record);
    };
  }

  /** What the run found; for what is settled already, what it was settled by. */
  private Settlement rightAsItIs(CaseKey key) {
    return finding(key)
        .<Settlement>map(Basis::of)
        .or(() -> before(key))
        .orElseThrow(
            () ->
                new CannotBeSettledException(
                    "Expected a follow-up that run %s found, but this one it did not find: settle it when a list shows it"
                        .formatted(run.id())));
  }

  private Optional<Finding> finding(CaseKey key) {
    return run.findings().stream().filter(found -> found.caseKey().equals(key)).findFirst();
  }

  private Optional<Settlement> before(CaseKey key) {
    return ever.last(Stream.of(key))
        .map(Settled::says)
        .filter(Settlement.RightAsItIs.class::isInstance);
  }

  private Settlement ofPeople(CaseKey key, Relation relation, Optional<OrganisationId> registry) {
    List<TurnsOn.Pair> pairs =
        new TurnsOn(dossier(key, heeded))
            .pairs(key.rule(), finding(key)).stream()
                .filter(pair -> registry.isEmpty() || pair.registries().contains(registry.get()))
                .toList();
    if (pairs.size() != 1) {
      throw new CannotBeSettledException(noPair(pairs));
    }
    return new Settlement.OfPeople(pairs.get(0).one(), pairs.get(0).other(), relation);
  }

  private static String noPair(List<TurnsOn.Pair> pairs) {
    if (pairs.isEmpty()) {
      return "Expected a follow-up that turns on two people, but this one does not: \"--as right-as-it-is\" settles any";
    }
    return "Expected a follow-up that turns on two people, but this one turns on %d pairs: say with --registry which registration is meant, of %s; or settle it with \"--as right-as-it-is\""
        .formatted(
            pairs.size(),
            pairs.stream()
                .flatMap(pair -> pair.registries().stream())
                .map(OrganisationId::value)
                .distinct()
                .sorted()
                .collect(Collectors.joining(", ")));
  }

  private Settlement oneAnimal(CaseKey key) {
    List<Statement> descriptions = descriptions(key);
    ChipNumber number = descriptions.get(0).chip();
    return new Settlement.OneAnimal(
        number,
        descriptions.stream()
            .filter(one -> one.chip().equals(number))
            .map(TurnsOn::digest)
            .distinct()
            .sorted()
            .toList());
  }

  private Settlement mistaken(CaseKey key, Optional<String> record) {
    List<Statement> descriptions = descriptions(key);
    return descriptions.stream()
        .filter(one -> record.equals(Optional.of(name(one))))
        .findFirst()
        .map(one -> new Settlement.MistakenNumber(one.chip(), one.source(), one.key()))
        .orElseThrow(
            () ->
                new CannotBeSettledException(
                    "Expected --record with the record whose number is mistaken, one of %s, but found %s"
                        .formatted(
                            descriptions.stream()
                                .map(SettlementMaker::name)
                                .distinct()
                                .limit(MOST_NAMED)
                                .collect(Collectors.joining(", ")),
                            record.isEmpty() ? "none" : "another")));
  }

  private static String name(Statement statement) {
    return statement.source() + ":" + statement.key();
  }

  /** What contradicts each other, whatever was settled. */
  private List<Statement> descriptions(CaseKey key) {
    if (key.rule().equals(FindingKind.NUMBER_ON_TWO_ANIMALS.word())) {
      List<Statement> all = new TurnsOn(dossier(key, Settlements.NONE)).descriptions();
      if (!all.isEmpty()) {
        return all;
      }
    }
    throw new CannotBeSettledException(
        "Expected a follow-up about one number on two animals, but this one is not: \"--as right-as-it-is\" settles any");
  }

  private Dossier dossier(CaseKey key, Settlements heeding) {
    if (!(key.anchor() instanceof Anchor.Chip chip)) {
      throw new CannotBeSettledException(
          "Expected a follow-up about an animal, but this one is about a record: \"--as right-as-it-is\" settles any");
    }
    Registries registries = new Registries(directory, new Cast(people, sources, heeding), periods);
    return Dossier.of(
        new AnimalReader(log, sources, heeding).read(chip.number()),
        registries,
        Supplies.read(log, registries.cast()));
  }

  /** The key under which something was settled about a follow-up. */
  public Optional<CaseKey> settledUnder(CaseKey key) {
    List<CaseKey> names =
        finding(key).map(HeldBack::names).orElseGet(() -> Stream.of(key)).toList();
    return ever.last(names.stream()).or(() -> ever.snooze(names.stream())).map(Settled::key);
  }
}
