package withers.run;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.chip.LostDigits;
import withers.codec.Streams;
import withers.contacts.People;
import withers.custody.Cast;
import withers.damage.CutNumbers;
import withers.damage.DamagedNumbers;
import withers.damage.DamagedRecord;
import withers.damage.KnownNumbers;
import withers.finding.Finding;
import withers.history.Animal;
import withers.history.History;
import withers.history.Periods;
import withers.history.Scope;
import withers.history.Sources;
import withers.log.LogSnapshot;
import withers.organisation.Directory;
import withers.registration.Registries;
import withers.rule.Assessment;
import withers.rule.Rules;

/**
 * Events in, findings out. Findings depend on the set of exports in the log and on the directory:
 * never on the order or number of imports, nor on partitions or threads.
 */
public final class Reconciliation {

  private final Directory directory;
  private final People people;
  private final Periods periods;
  private final Workers workers;
  private final Runnable partitionDone;

  /**
   * A reconciliation by these rules of a workspace.
   *
   * @param periods the lengths of time that the workspace sets
   * @param partitionDone told, by any thread, whenever a partition was judged
   */
  public Reconciliation(
      Directory directory,
      People people,
      Periods periods,
      Workers workers,
      Runnable partitionDone) {
    this.directory = directory;
    this.people = people;
    this.periods = periods;
    this.workers = workers;
    this.partitionDone = partitionDone;
  }

  /** Judges every animal that the log tells of. */
  public Outcome judge(LogSnapshot log, Scope scope) {
    Sources sources = Sources.of(log.markers(), scope);
    PartitionReader reader = new PartitionReader(log, sources);
    Unplaced unplaced = Unplaced.read(log, sources);
    Rules rules = new Rules(new Registries(directory, new Cast(people, sources), periods));
    StandAlone.Judge judge = new StandAlone.Judge(reader, new CutNumbers(sources), unplaced, rules);
    List<StandAlone> parts =
        workers.map(
            IntStream.range(0, Streams.CHIPS.partitions()).boxed().toList(),
            partition -> judge(partition, judge));
    return together(parts, judge, sources);
  }

  private StandAlone judge(int partition, StandAlone.Judge judge) {
    StandAlone judged = judge.judge(partition);
    partitionDone.run();
    return judged;
  }

  private Outcome together(List<StandAlone> parts, StandAlone.Judge judge, Sources sources) {
    Set<ChipNumber> zeros =
        parts.stream().flatMap(part -> part.zeros().stream()).collect(Collectors.toSet());
    Deferred deferred =
        new Deferred(
            parts.stream().flatMap(part -> part.deferred().stream()).toList(),
            chip -> LostDigits.endsInZeros(chip) && !zeros.contains(chip));
    Placement placement = deferred.place(judge.unplaced());
    Set<ChipNumber> late = deferred.missing();
    List<History> fetched = judge.reader().histories(late);
    deferred.fetch(fetched);
    List<Animal> animals = deferred.animals();
    List<Assessment> joined = workers.map(animals, judge.rules()::assess);
    long alone = parts.stream().mapToLong(StandAlone::animals).sum() - judgedTooEarly(fetched);
    return new Outcome(
        alone + animals.size(),
        telling(parts, late, joined),
        damaged(parts, judge.unplaced(), placement, animals, sources));
  }

  private static List<Finding> damaged(
      List<StandAlone> parts,
      Unplaced unplaced,
      Placement placement,
      List<Animal> animals,
      Sources sources) {
    Stream<DamagedRecord> unread =
        unplaced.damaged().stream().flatMap(one -> DamagedRecords.of(one, placement.placeOf(one)));
    Stream<DamagedRecord> cut =
        parts.stream().flatMap(part -> part.cut().stream()).flatMap(DamagedRecords::of);
    List<DamagedRecord> records = Stream.concat(unread, cut).toList();
    if (records.isEmpty()) {
      return List.of();
    }
    Set<ChipNumber> dead =
        animals.stream()
            .filter(Animal::isDead)
            .flatMap(animal -> animal.chips().stream())
            .collect(Collectors.toSet());
    KnownNumbers known = new KnownNumbers(parts.stream().map(StandAlone::known).toList());
    return new DamagedNumbers(sources, known, dead::contains).judge(records);
  }

  /** Chips that phase 1 took for an animal of their own, before their pairing was known. */
  private static long judgedTooEarly(Collection<History> fetched) {
    return fetched.stream().filter(history -> !history.statements().isEmpty()).count();
  }

  private static List<Assessment> telling(
      List<StandAlone> parts, Set<ChipNumber> late, List<Assessment> joined) {
    Stream<Assessment> alone =
        parts.stream()
            .flatMap(part -> part.telling().stream())
            .filter(assessment -> !late.contains(assessment.anchor()));
    return new ArrayList<>(
        Stream.concat(alone, joined.stream().filter(a -> !a.isClear())).toList());
  }
}
