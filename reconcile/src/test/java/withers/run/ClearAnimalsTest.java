package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withers.audit.Confidential;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.cases.Settled;
import withers.cases.Settlement;
import withers.cases.Settlement.Client;
import withers.cases.Settlement.Relation;
import withers.clear.ClearAnimals;
import withers.codec.Streams;
import withers.codec.finding.CanonicalFindings;
import withers.contact.ContactVault.RecordName;
import withers.fact.ChipEvent;
import withers.history.Scope;
import withers.id.ImportId;
import withers.id.OrganisationId;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.LogStream;
import withers.log.SampleMarkers;
import withers.log.memory.MemoryEventLog;
import withers.run.Reconciliation.Judged;
import withers.source.OwnSources;
import withers.world.Chips;
import withers.world.Export;
import withers.world.RandomWorld;
import withers.world.World;

/**
 * A run that does not look at animals which were clear before finds what a run finds that looks at
 * all. {@code -Dclear.seeds=N} asks for more worlds.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ClearAnimalsTest {

  private static final int SEEDS = Integer.getInteger("clear.seeds", 200);

  /** Animals that are told of sensibly, beside what random worlds tell of some of them. */
  private static final int SENSIBLE = 9;

  private static final List<String> PEOPLE =
      List.of("Ada", "Ada'", "AdaMoved", "AdaMarried", "Adas", "Nameless0101", "Bo", "Cy");

  private static final LocalDate FIRST = RandomWorld.ROUNDS.get(0);

  /** What is told of some besides: now, of a day to come, or by the second round. */
  private static final List<String> MORE =
      List.of(
          "south %1$s C%2$d z%2$d registered %3$s %4$s%n",
          "shelter %1$s C%2$d s%2$d went 2026-07-10 adoption own Cy%n",
          "north 2026-07-31 C%2$d n%2$d registered 2026-07-15 Dee%n",
          "shelter 2026-07-31 C%2$d s%2$d rekeyed t%2$d%n",
          "north 2026-07-31 C%2$d n%2$d gone%n",
          "shelter 2026-07-31 C%2$d s%2$d withdrawn outcome%n");

  /** An animal whose adopter is registered; all of invented records. */
  private static final String ADOPTED =
      """
      shelter 2026-06-30 C1 s1 went/outcome 2026-02-01 adoption own Ada/1
      shelter 2026-06-30 C1 s1 linked 1
      clinic 2026-06-30 C1 p1 visit 2026-03-01 Ada
      north 2026-06-30 C1 n1 registered 2026-02-05 Ada
      south 2026-06-30
      """;

  @Test
  void what_is_found_does_not_depend_on_what_was_clear_before() {
    Counted counted = new Counted();
    for (long seed = 0; seed < SEEDS; seed++) {
      new Months(seed).live(counted);
    }
    assertThat(counted.kept).as("animals that were still clear").isGreaterThan(3L * SEEDS);
    assertThat(counted.lost).as("animals that were clear and are not").isGreaterThan(SEEDS);
    assertThat(counted.voided).as("months in which nothing held").isGreaterThan(SEEDS / 20);
  }

  private static final class Counted {
    private long kept;
    private long lost;
    private long voided;
  }

  /** Months of a random world, in which exports come late, and people settle and hide things. */
  private static final class Months {
    private final String seed;
    private final Random random;
    private final World world;
    private final EventLog log = new MemoryEventLog();
    private final List<Export> coming;
    private LocalDate asOf = FIRST;
    private long written;

    Months(long seed) {
      this.seed = "seed " + seed;
      this.random = new Random(seed);
      String lines = sensible(random) + RandomWorld.lines(seed, 4, 0);
      this.world = World.of(lines);
      this.coming =
          new ArrayList<>(random.nextBoolean() ? world.exports() : withheldForAMonth(lines));
      if (random.nextBoolean()) {
        sayEarly("north");
      }
    }

    /** A source's first import states what its second export says: so do imports that come late. */
    private void sayEarly(String source) {
      List<Export> exports =
          coming.stream().filter(export -> export.source().value().equals(source)).toList();
      List<ChipEvent> both = new ArrayList<>(exports.get(0).events());
      both.addAll(exports.get(1).events());
      coming.replaceAll(export -> export.equals(exports.get(0)) ? export.with(both) : export);
      coming.replaceAll(export -> export.equals(exports.get(1)) ? export.with(List.of()) : export);
    }

    /** What the north no longer lists in the second round is withheld until its next export. */
    private static List<Export> withheldForAMonth(String lines) {
      LocalDate day = RandomWorld.ROUNDS.get(1);
      List<Export> withholding = World.of(lines).withholding("north", day).exports();
      List<Export> letting = World.of(lines).exports();
      return IntStream.range(0, letting.size())
          .mapToObj(i -> (letting.get(i).date().isAfter(day) ? letting : withholding).get(i))
          .toList();
    }

    /** Now and then a run looks back, and leaves what was clear for the next one. */
    void live(Counted counted) {
      Optional<ClearAnimals> kept = Optional.empty();
      for (LocalDate round : RandomWorld.ROUNDS) {
        importUpTo(round);
        for (int run = 0; run < 3; run++) {
          asOf = round.plusDays(run).minusDays(random.nextInt(4) == 0 ? random.nextInt(60) : 0);
          ClearAnimals found = compare(kept, counted).clear().orElseThrow();
          boolean isNews = kept.filter(before -> !found.basis().isNews(before.basis())).isEmpty();
          kept = isNews ? Optional.of(found) : kept;
          settleOrHide();
        }
      }
    }

    /** Some come a month late, and some early. */
    private void importUpTo(LocalDate round) {
      boolean last = round.equals(RandomWorld.ROUNDS.get(RandomWorld.ROUNDS.size() - 1));
      for (Export export : List.copyOf(coming)) {
        boolean isDue = !export.date().isAfter(round) && (last || random.nextInt(8) > 0);
        if (isDue || random.nextInt(30) == 0) {
          coming.remove(export);
          export.importInto(log, new UUID(0, ++written), 1 + random.nextInt(7));
        }
      }
    }

    private Judged compare(Optional<ClearAnimals> before, Counted counted) {
      Scope scope = Scope.asOf(asOf);
      Judged all = world.reconciliation(1).judge(log.snapshot(), scope, Optional.empty());
      Judged judged =
          world
              .reconciliation(1 + random.nextInt(2))
              .judge(log.snapshot(), scope, before.map(clear -> ClearAnimals.read(clear.bytes())));
      assertThat(told(judged.outcome())).as(seed).isEqualTo(told(all.outcome()));
      before.ifPresent(clear -> count(clear, judged.clear().orElseThrow(), counted));
      return judged;
    }

    private static void count(ClearAnimals before, ClearAnimals now, Counted counted) {
      Set<String> still = numbers(now);
      long kept = numbers(before).stream().filter(still::contains).count();
      counted.kept += kept;
      counted.lost += numbers(before).size() - kept;
      counted.voided += before.basis().holdsFor(now.basis()) ? 0 : 1;
    }

    private void settleOrHide() {
      switch (random.nextInt(6)) {
        case 0 -> write(Streams.CASES, OwnSources.SETTLEMENTS, settled(people()));
        case 1 -> write(Streams.CASES, OwnSources.SETTLEMENTS, settled(mistaken()));
        case 2 -> write(Streams.AUDIT, OwnSources.AUDIT, hidden());
        default -> {
          // nobody does
        }
      }
    }

    private Settled settled(Settlement says) {
      return new Settled(
          ++written,
          new CaseKey("any", chip(), new OrganisationId("any"), "k" + written),
          asOf,
          asOf,
          Optional.empty(),
          "coordinator",
          "invented",
          says);
    }

    private Anchor.Chip chip() {
      return new Anchor.Chip(Chips.chip(1 + random.nextInt(SENSIBLE)));
    }

    private Settlement people() {
      return new Settlement.OfPeople(
          client(), client(), Relation.values()[random.nextInt(Relation.values().length)]);
    }

    private Client client() {
      return new Client(
          world.reference(oneOf(PEOPLE, random)),
          new SourceId("shelter"),
          random.nextBoolean()
              ? Optional.empty()
              : Optional.of(Integer.toString(1 + random.nextInt(SENSIBLE))));
    }

    private Settlement mistaken() {
      int chip = 1 + random.nextInt(SENSIBLE);
      return new Settlement.MistakenNumber(
          Chips.chip(chip), new SourceId("shelter"), new RecordKey("s" + chip));
    }

    /** An animal by its number, a person, or a record. */
    private Confidential hidden() {
      int which = random.nextInt(3);
      return new Confidential(
          asOf,
          "desk",
          "invented",
          which == 0 ? List.of(world.reference(oneOf(PEOPLE, random))) : List.of(),
          which == 1 ? List.of(record()) : List.of(),
          which == 2 ? List.of(chip().number()) : List.of(),
          false);
    }

    private RecordName record() {
      int chip = 1 + random.nextInt(SENSIBLE);
      return random.nextBoolean()
          ? new RecordName(new SourceId("north"), new RecordKey("n" + chip))
          : new RecordName(new SourceId("shelter"), new RecordKey("t" + chip));
    }

    private <E> void write(LogStream<? super E> stream, SourceId chain, E event) {
      ClearAnimalsTest.write(log, stream, chain, event, new UUID(1, ++written), asOf);
    }
  }

  private static <E> void write(
      EventLog log,
      LogStream<? super E> stream,
      SourceId chain,
      E event,
      UUID number,
      LocalDate on) {
    ImportId id = new ImportId(number);
    log.append(new Batch<>(stream, 0, id, 0, List.of(event)));
    log.commit(SampleMarkers.next(log, id, chain, on, 0));
  }

  private static String oneOf(List<String> words, Random random) {
    return words.get(random.nextInt(words.size()));
  }

  private static String sensible(Random random) {
    return IntStream.rangeClosed(1, SENSIBLE)
        .mapToObj(chip -> sensible(chip, random))
        .collect(Collectors.joining());
  }

  /** An animal of which nothing has to be said, as a rule: with a second registration, or links. */
  private static String sensible(int chip, Random random) {
    String keeper = oneOf(PEOPLE, random);
    LocalDate adopted = FIRST.minusDays(60 + random.nextInt(200));
    String lines =
        """
        shelter %1$s C%2$d s%2$d went/outcome %3$s adoption own %4$s/%2$d
        shelter %1$s C%2$d s%2$d linked %2$d
        clinic %1$s C%2$d p%2$d visit %5$s %4$s
        north %1$s C%2$d n%2$d registered %3$s %6$s
        """
            .formatted(
                FIRST,
                chip,
                adopted,
                keeper,
                adopted.plusDays(random.nextInt(50)),
                random.nextInt(4) == 0 ? oneOf(PEOPLE, random) : keeper);
    String more = random.nextInt(2) == 0 ? "" : oneOf(MORE, random);
    return lines + more.formatted(FIRST, chip, adopted, keeper);
  }

  private static Set<String> numbers(ClearAnimals clear) {
    Set<String> numbers = new TreeSet<>();
    for (int partition = 0; partition < Streams.CHIPS.partitions(); partition++) {
      clear.still(partition, Set.of()).forEach((chip, onlyFrom) -> numbers.add(chip.display()));
    }
    return numbers;
  }

  /** All that a run says, in words. */
  private static Map<String, Object> told(Outcome outcome) {
    Map<String, Object> told = new TreeMap<>();
    told.put("animals", outcome.animals());
    told.put("findings", CanonicalFindings.of(outcome.findings()).text());
    told.put("whole findings", outcome.findings());
    told.put("not judged", outcome.notJudged());
    told.put("held back", outcome.heldBack());
    told.put("answered", outcome.answered());
    told.put("undecided records", outcome.records().undecided());
    told.put("undecided", Undecided.of(outcome));
    return told;
  }

  @Test
  void an_animal_that_was_clear_is_not_looked_at_again() {
    World world = World.of(ADOPTED);
    Judged first = judge(world.log(), "2026-07-01", Optional.empty());

    Judged second = judge(world.log(), "2026-08-01", first.clear());

    assertThat(numbers(first.clear().orElseThrow())).containsExactly(Chips.chip(1).display());
    assertThat(numbers(second.clear().orElseThrow())).containsExactly(Chips.chip(1).display());
    assertThat(second.outcome().animals()).isEqualTo(1);
  }

  private static Judged judge(EventLog log, String asOf, Optional<ClearAnimals> before) {
    return World.of(ADOPTED)
        .reconciliation(1)
        .judge(log.snapshot(), Scope.asOf(LocalDate.parse(asOf)), before);
  }

  /** Each takes away what the animal was clear by, without a word about its number. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        // the shelter's animal without a number may be this one
        "shelter 2026-07-31 #1 s9 is dog Rook 2015-01-01",
        // a damaged number may be this one
        "clinic 2026-07-31 ?C1,C2 p9 visit 2026-07-01 Cy"
      })
  void what_is_said_without_its_number_lets_an_animal_be_looked_at_again(String more) {
    Judged first = judge(World.of(ADOPTED).log(), "2026-07-01", Optional.empty());
    EventLog later = World.of(ADOPTED + more).log();

    Judged second = judge(later, "2026-08-01", first.clear());

    assertThat(numbers(first.clear().orElseThrow())).hasSize(1);
    assertThat(numbers(second.clear().orElseThrow())).isEmpty();
  }

  @Test
  void a_run_that_looks_back_uses_nothing_of_a_later_one() {
    World world = World.of(ADOPTED);
    Judged later = judge(world.log(), "2026-08-01", Optional.empty());
    Judged back = judge(world.log(), "2026-01-15", later.clear());

    assertThat(told(back.outcome()))
        .isEqualTo(told(judge(world.log(), "2026-01-15", Optional.empty()).outcome()));
    assertThat(later.clear().orElseThrow().basis().holdsFor(back.clear().orElseThrow().basis()))
        .isFalse();
  }

  @Test
  void a_log_that_lost_an_export_is_looked_at_whole() {
    World world = World.of(ADOPTED);
    List<Export> left =
        world.exports().stream().filter(one -> !one.source().value().equals("north")).toList();
    Judged first = judge(world.log(), "2026-07-01", Optional.empty());

    Judged second = judge(World.log(left, 5), "2026-07-01", first.clear());

    assertThat(numbers(first.clear().orElseThrow())).hasSize(1);
    assertThat(numbers(second.clear().orElseThrow())).isEmpty();
  }

  @Test
  void a_run_that_leaves_out_what_is_known_keeps_nothing() {
    World world = World.of(ADOPTED);
    Scope scope =
        new Scope(LocalDate.parse("2026-07-01"), Optional.of(LocalDate.parse("2026-07-01")));

    Judged judged = world.reconciliation(1).judge(world.log().snapshot(), scope, Optional.empty());

    assertThat(judged.clear()).isEmpty();
  }
}
