package withers.run;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import withers.chip.ChipNumber;
import withers.chip.LostDigits;
import withers.clear.ClearAnimals;
import withers.clear.ClearBasis;
import withers.clear.ClearPart;
import withers.codec.Streams;
import withers.contacts.People;
import withers.custody.Cast;
import withers.damage.CutNumbers;
import withers.history.Animal;
import withers.history.History;
import withers.history.Periods;
import withers.history.Scope;
import withers.history.Sources;
import withers.log.LogSnapshot;
import withers.organisation.Directory;
import withers.packed.Gathering;
import withers.packed.LazyList;
import withers.registration.Registries;
import withers.rule.Assessment;
import withers.rule.HeldBack;
import withers.rule.Rules;
import withers.settled.Settlements;
import withers.slip.Candidates;
import withers.supply.Stocktake;
import withers.supply.Supplies;
import withers.work.Crew;

/**
 * Events in, findings out. Findings depend on the set of exports in the log and on the directory:
 * never on the order or number of imports, nor on partitions or threads.
 */
public final class Reconciliation {

  /** Animals that phase 2 judges in one go. */
  private static final int AT_A_TIME = 1_000;

  private final Directory directory;
  private final People people;
  private final Periods periods;
  private final Workers workers;
  private final Runnable partitionDone;
  private final Optional<Crew> crew;

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
    this.crew = Optional.empty();
  }

  private Reconciliation(Reconciliation alone, Crew crew) {
    this.directory = alone.directory;
    this.people = alone.people;
    this.periods = alone.periods;
    this.workers = alone.workers;
    this.partitionDone = alone.partitionDone;
    this.crew = Optional.of(crew);
  }

  /** The same, with others who do what takes no vault; what they leave is done here. */
  public Reconciliation sharedWith(Crew others) {
    return new Reconciliation(this, others);
  }

  /**
   * What came of it.
   *
   * @param clear the animals that a later run need not look at; empty when the run left out what is
   *     known today
   */
  public record Judged(Outcome outcome, Optional<ClearAnimals> clear) {}

  /** Judges every animal that the log tells of. */
  public Outcome judge(LogSnapshot log, Scope scope) {
    return judge(log, scope, Optional.empty()).outcome();
  }

  /**
   * Judges every animal that the log tells of, but for those that were clear before and still are.
   *
   * @param before what was clear by the same rules, configuration and contacts
   */
  public Judged judge(LogSnapshot log, Scope scope, Optional<ClearAnimals> before) {
    Sources sources = Sources.of(log.markers(), scope);
    Settlements settlements = SettlementReader.read(log, scope);
    PartitionReader reader = new PartitionReader(log, sources, settlements);
    Unplaced unplaced = Unplaced.read(log, sources);
    Cast cast = new Cast(people, sources, settlements, DiscretionReader.read(log));
    Supplies supplies = Supplies.read(log, cast);
    Registries registries = new Registries(directory, cast, periods);
    Rules rules = new Rules(registries, supplies);
    Optional<ClearBasis> basis = ClearBasis.of(log, sources);
    StandAlone.Judge judge =
        new StandAlone.Judge(
            reader,
            new CutNumbers(sources),
            unplaced,
            new Stocktake(supplies, registries),
            rules,
            Reopening.of(before, basis, cast, unplaced));
    Map<Integer, StandAlone> elsewhere =
        crew.map(others -> new JudgedElsewhere(judge, people, partitionDone))
            .map(parts -> parts.by(crew.orElseThrow(), PartOrder.of(log, scope)))
            .orElse(Map.of());
    List<StandAlone> parts =
        workers.map(
            IntStream.range(0, Streams.CHIPS.partitions()).boxed().toList(),
            partition ->
                Optional.ofNullable(elsewhere.get(partition))
                    .orElseGet(() -> judge(partition, judge)));
    Outcome outcome = together(parts, judge, cast);
    return new Judged(
        outcome.with(
            new Wishes(AnswerReader.read(log, scope), reader, cast).about(outcome.findings())),
        basis.map(now -> new ClearAnimals(now, clear(parts))));
  }

  private static Map<Integer, ClearPart> clear(List<StandAlone> parts) {
    Map<Integer, ClearPart> clear = new HashMap<>();
    for (int partition = 0; partition < parts.size(); partition++) {
      int number = partition;
      parts.get(partition).clear().ifPresent(part -> clear.put(number, part));
    }
    return clear;
  }

  private StandAlone judge(int partition, StandAlone.Judge judge) {
    StandAlone judged = judge.judge(partition);
    partitionDone.run();
    return judged;
  }

  private Outcome together(List<StandAlone> parts, StandAlone.Judge judge, Cast cast) {
    Set<ChipNumber> zeros =
        parts.stream().flatMap(part -> part.zeros().stream()).collect(Collectors.toSet());
    Deferred deferred =
        new Deferred(
            LazyList.together(parts.stream().map(StandAlone::deferred).toList()),
            chip -> LostDigits.endsInZeros(chip) && !zeros.contains(chip));
    Placement placement = deferred.place(judge.unplaced());
    Set<ChipNumber> late = deferred.missing();
    List<History> fetched = judge.reader().histories(late);
    deferred.fetch(fetched);
    List<Animal> animals = deferred.animals();
    Joined joined = judged(animals, judge);
    parts.forEach(part -> part.aside().leaveOut(late));
    List<Candidates.Part> aside = new ArrayList<>(joined.aside);
    parts.forEach(part -> aside.add(part.aside()));
    List<Assessment> mistyped =
        new MistypedRegistrations(judge.reader(), judge.rules(), workers)
            .judge(Candidates.among(aside, people::signs), animals);
    long alone = parts.stream().mapToLong(StandAlone::animals).sum() - judgedTooEarly(fetched);
    return new Outcome(
        alone + animals.size(),
        withAgain(telling(parts, late, joined.assessments), mistyped, judge),
        new RecordsJudged(parts, judge, cast.sources())
            .findings(placement, animals)
            .keeping(finding -> !cast.discretion().covers(finding.caseKey()))
            .holdingBack(new HeldBack(cast)::isHeldBack),
        cast.settlements().answered());
  }

  /** What phase 2 says of animals, where it says something, and what it puts aside. */
  private record Joined(List<Assessment> assessments, List<Candidates.Part> aside) {
    static Joined of(List<Animal> some, StandAlone.Judge judge) {
      Candidates.Part aside = new Candidates.Part();
      Gathering<Assessment> telling = judge.assessments();
      some.stream()
          .map(animal -> judge.rules().assess(animal, aside))
          .filter(assessment -> !assessment.isClear())
          .forEach(telling::add);
      return new Joined(telling.list(), List.of(aside));
    }

    static Joined together(List<Joined> parts) {
      return new Joined(
          LazyList.together(parts.stream().map(Joined::assessments).toList()),
          parts.stream().flatMap(part -> part.aside.stream()).toList());
    }
  }

  private Joined judged(List<Animal> animals, StandAlone.Judge judge) {
    List<List<Animal>> some = new ArrayList<>();
    for (int from = 0; from < animals.size(); from += AT_A_TIME) {
      some.add(animals.subList(from, Math.min(animals.size(), from + AT_A_TIME)));
    }
    return Joined.together(workers.map(some, few -> Joined.of(few, judge)));
  }

  /** An animal that was judged again has its second assessment only. */
  private static List<Assessment> withAgain(
      LazyList<Assessment> first, List<Assessment> again, StandAlone.Judge judge) {
    Gathering<Assessment> second = judge.assessments();
    second.addAll(again);
    return LazyList.together(
        List.of(
            without(again.stream().map(Assessment::anchor).collect(Collectors.toSet()), first),
            second.list()));
  }

  /** Chips that phase 1 took for an animal of their own, before their pairing was known. */
  private static long judgedTooEarly(Collection<History> fetched) {
    return fetched.stream().filter(history -> !history.statements().isEmpty()).count();
  }

  private static LazyList<Assessment> telling(
      List<StandAlone> parts, Set<ChipNumber> late, List<Assessment> joined) {
    LazyList<Assessment> alone =
        LazyList.together(parts.stream().map(StandAlone::telling).toList());
    return LazyList.together(List.of(without(late, alone), joined));
  }

  /** Each is looked at, unless there is nothing to look for. */
  private static LazyList<Assessment> without(
      Set<ChipNumber> anchors, LazyList<Assessment> assessments) {
    return anchors.isEmpty()
        ? assessments
        : assessments.where(one -> !anchors.contains(one.anchor()));
  }
}
