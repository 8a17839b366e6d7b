package withers.settling;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.cases.CaseKey;
import withers.cases.Settled;
import withers.cases.Settlement;
import withers.cases.Settlement.Client;
import withers.cases.Settlement.Relation;
import withers.codec.StatementDigest;
import withers.codec.Streams;
import withers.codec.finding.CanonicalFindings;
import withers.fact.Fact;
import withers.finding.Finding;
import withers.finding.Who;
import withers.history.Scope;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.SampleMarkers;
import withers.log.memory.MemoryEventLog;
import withers.run.Outcome;
import withers.settled.Basis;
import withers.source.OwnSources;
import withers.world.Export;
import withers.world.RandomWorld;
import withers.world.World;

/**
 * Findings depend on the set of exports and of what people settled: never on when and how often
 * either came.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LawOfSettlementsTest {

  private static final int SEEDS = 150;
  private static final Scope SCOPE = Scope.asOf(LocalDate.of(2026, 10, 1));

  @Test
  void neither_order_nor_repetition_of_exports_and_settlements_change_a_byte() {
    int changed = 0;
    for (long seed = 0; seed < SEEDS; seed++) {
      World world = World.of(RandomWorld.lines(seed, 12, 0));
      Random random = new Random(seed);
      Outcome unsettled = world.judge(SCOPE);
      List<Settled> settled = settled(unsettled, world, random);
      Outcome straight = judge(world, straight(world, settled), SCOPE);

      Outcome mixed = judge(world, mixed(world, settled, random), SCOPE);

      assertThat(canonical(mixed)).as("seed " + seed).isEqualTo(canonical(straight));
      assertThat(mixed.notJudged()).as("seed " + seed).isEqualTo(straight.notJudged());
      assertThat(keys(mixed)).as("seed " + seed).isEqualTo(keys(straight));
      assertThat(mixed.answered()).as("seed " + seed).isEqualTo(straight.answered());
      changed += canonical(straight).equals(canonical(unsettled)) ? 0 : 1;
    }
    assertThat(changed).as("worlds in which settling changed something").isGreaterThan(SEEDS / 2);
  }

  @Test
  void what_was_settled_by_a_day_is_what_a_log_of_the_settlements_up_to_it_tells() {
    for (long seed = 0; seed < SEEDS; seed++) {
      World world = World.of(RandomWorld.lines(seed, 12, 0));
      Random random = new Random(seed);
      List<Settled> settled = settled(world.judge(SCOPE), world, random);
      LocalDate known = LocalDate.of(2026, 9, 30).plusDays(random.nextInt(4));
      List<Settled> upTo = settled.stream().filter(one -> !one.recorded().isAfter(known)).toList();

      Outcome lookedBack =
          judge(world, mixed(world, settled, random), new Scope(SCOPE.asOf(), Optional.of(known)));
      Outcome then = judge(world, straight(world, upTo), SCOPE);

      assertThat(canonical(lookedBack)).as("seed " + seed).isEqualTo(canonical(then));
      assertThat(keys(lookedBack)).as("seed " + seed).isEqualTo(keys(then));
    }
  }

  private static Outcome judge(World world, EventLog log, Scope scope) {
    return world.reconciliation(1).judge(log.snapshot(), scope);
  }

  private static String canonical(Outcome outcome) {
    return CanonicalFindings.of(outcome.findings()).text();
  }

  private static Set<CaseKey> keys(Outcome outcome) {
    return new TreeSet<>(outcome.heldBack().stream().map(Finding::caseKey).toList());
  }

  /** Something about every second finding, now and then something more about an earlier one. */
  private static List<Settled> settled(Outcome outcome, World world, Random random) {
    List<Settled> settled = new ArrayList<>();
    for (Finding finding : outcome.findings()) {
      if (random.nextBoolean()) {
        Settlement says = says(finding, world, random);
        settled.add(settled(settled.size() + 1, finding.caseKey(), says, random));
      }
      if (!settled.isEmpty() && random.nextInt(6) == 0) {
        CaseKey earlier = settled.get(random.nextInt(settled.size())).key();
        settled.add(settled(settled.size() + 1, earlier, new Settlement.TakenBack(), random));
      }
    }
    return settled;
  }

  private static Settled settled(long number, CaseKey key, Settlement says, Random random) {
    LocalDate day = LocalDate.of(2026, 9, 29).plusDays(random.nextInt(3));
    return new Settled(
        number,
        key,
        day.plusDays(random.nextInt(2)),
        day,
        random.nextInt(4) == 0 ? Optional.of(day) : Optional.empty(),
        "front desk",
        "asked",
        says);
  }

  private static Settlement says(Finding finding, World world, Random random) {
    List<Who.Person> people =
        Stream.concat(
                Stream.of(finding.custodian()),
                finding.registered().stream().map(Finding.Registration::primary))
            .flatMap(who -> who.person().stream())
            .toList();
    return switch (finding.kind()) {
      case NUMBER_ON_TWO_ANIMALS ->
          random.nextBoolean() ? oneAnimal(finding, world) : mistaken(finding);
      case CONTACT_BEHIND, RECORDS_BEHIND, DETAILS_DIFFER, CHIPS_DIVERGE, REGISTRIES_DISAGREE ->
          people.size() < 2 || random.nextInt(3) == 0
              ? Basis.of(finding)
              : new Settlement.OfPeople(
                  client(people.get(0), random),
                  client(people.get(1), random),
                  Relation.values()[random.nextInt(3)]);
      default -> Basis.of(finding);
    };
  }

  private static Client client(Who.Person person, Random random) {
    return new Client(
        person.reference(),
        person.source(),
        random.nextBoolean() ? Optional.of("1" + random.nextInt(10)) : Optional.empty());
  }

  private static Settlement oneAnimal(Finding finding, World world) {
    List<String> digests =
        world.exports().stream()
            .flatMap(export -> export.events().stream())
            .filter(event -> event.fact() instanceof Fact.Described)
            .map(event -> StatementDigest.of(event).toString())
            .distinct()
            .sorted()
            .toList();
    return new Settlement.OneAnimal(finding.chips().get(0), digests);
  }

  private static Settlement mistaken(Finding finding) {
    SourceId source = finding.evidence().get(0).source();
    return new Settlement.MistakenNumber(
        finding.chips().get(0), source, finding.evidence().get(0).key());
  }

  private static EventLog straight(World world, List<Settled> settled) {
    EventLog log = world.log();
    long id = 0;
    for (Settled one : settled) {
      write(List.of(one), ++id, log);
    }
    return log;
  }

  /** Exports and settlements in any order, some of them twice, events in any order. */
  private static EventLog mixed(World world, List<Settled> settled, Random random) {
    List<Object> all = new ArrayList<>(world.exports());
    all.addAll(settled);
    all.addAll(settled.stream().filter(one -> random.nextInt(3) == 0).toList());
    Collections.shuffle(all, random);
    EventLog log = new MemoryEventLog();
    long id = 0;
    for (Object next : all) {
      id++;
      if (next instanceof Export export) {
        World.mixed(export, random).importInto(log, new UUID(0, id), 1 + random.nextInt(7));
      } else {
        write(List.of((Settled) next), id, log);
      }
    }
    return log;
  }

  private static void write(List<Settled> some, long number, EventLog log) {
    ImportId id = new ImportId(new UUID(2, number));
    log.append(new Batch<>(Streams.CASES, 0, id, 0, List.copyOf(some)));
    LocalDate day = some.get(0).recorded();
    log.commit(SampleMarkers.next(log, id, OwnSources.SETTLEMENTS, day, some.size()));
  }
}
