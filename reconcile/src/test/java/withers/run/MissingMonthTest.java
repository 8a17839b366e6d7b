package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.cases.CaseKey;
import withers.custody.Cast;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.ScanResult;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.history.Animal;
import withers.history.Scope;
import withers.history.Sources;
import withers.history.Statement;
import withers.id.OrganisationId;
import withers.log.EventLog;
import withers.rule.Assessment;
import withers.world.Export;
import withers.world.QuietWorld;
import withers.world.RandomWorld;
import withers.world.World;

/**
 * Taking any one export away opens no finding that rests on what the export would have told; docs/
 * decisions/0029 says what each kind rests on, and what nobody can miss. {@code -Dmissing.seeds=N}
 * asks for more worlds.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class MissingMonthTest {

  private static final int SEEDS = Integer.getInteger("missing.seeds", 200);
  private static final LocalDate LAST_MONTH = RandomWorld.ROUNDS.get(2).plusDays(1);
  private static final LocalDate THIS_MONTH = RandomWorld.ROUNDS.get(3).plusDays(1);

  /** What would speak against a kind that rests on a silence which is no registry's alone. */
  private static final Map<FindingKind, Predicate<Fact>> AGAINST =
      new EnumMap<>(
          Map.of(
              FindingKind.SCAN_OVERDUE,
              MissingMonthTest::isOfReader,
              FindingKind.NON_ISO_ONLY,
              Fact.PairedWith.class::isInstance,
              FindingKind.TRAIL_ENDS_AT_PURCHASER,
              fact -> true,
              FindingKind.STOCK_UNACCOUNTED,
              fact -> !(fact instanceof Fact.Supplied)));

  /** Kinds that rest on what somebody says, and on nobody's silence. */
  private static final Set<FindingKind> OF_NO_SILENCE =
      Set.of(
          FindingKind.FOUND_WAITING,
          FindingKind.NUMBER_ON_TWO_ANIMALS,
          FindingKind.CUSTODY_UNCLEAR,
          FindingKind.NOT_DETECTED,
          FindingKind.NUMBER_DAMAGED);

  private static boolean isOfReader(Fact fact) {
    return fact instanceof Fact.Implanted
        || fact instanceof Fact.Scanned scan && scan.result() == ScanResult.READ;
  }

  @Test
  void in_random_worlds_nothing_opens_that_the_missing_export_would_have_spoken_against() {
    Count count = new Count();
    for (long seed = 0; seed < SEEDS / 20; seed++) {
      count.addMonth("random seed " + seed, RandomWorld.lines(seed, 8, 0));
    }
    assertThat(count.opened).isEmpty();
  }

  @Test
  void in_quiet_worlds_nothing_opens_that_the_missing_export_would_have_spoken_against() {
    Count count = new Count();
    for (long seed = 0; seed < SEEDS; seed++) {
      count.addMonth("quiet seed " + seed, QuietWorld.lines(seed));
    }
    assertThat(count.opened).isEmpty();
    assertThat(count.judged).containsKeys(AGAINST.keySet().toArray(FindingKind[]::new));
  }

  /** What was found without one export, and what of it should not have been. */
  private static final class Count {
    private final Map<FindingKind, Integer> judged = new EnumMap<>(FindingKind.class);
    private final List<String> opened = new ArrayList<>();

    void addMonth(String name, String lines) {
      Month month = Month.of(lines);
      month.world.exports().stream()
          .filter(export -> !export.events().isEmpty())
          .forEach(export -> add(name, month, export));
    }

    private void add(String name, Month month, Export left) {
      for (Finding finding : month.without(left).findings()) {
        judged.merge(finding.kind(), 1, Integer::sum);
        if (month.wouldBeSpokenAgainst(finding, left)) {
          opened.add(
              "%s without %s of %s: %s"
                  .formatted(name, left.source(), left.date(), finding.caseKey()));
        }
      }
    }
  }

  /** A world, and what was found in it a month ago. */
  private record Month(World world, Outcome last) {

    /** Boxes are added and never put right: docs/decisions/0029 says why. */
    static Month of(String lines) {
      World world = World.of(lines.replaceAll("(?m)^(works (\\S+) \\S+ b\\d) ", "$1/$2 "));
      List<Export> before =
          world.exports().stream().filter(e -> !e.date().isAfter(LAST_MONTH)).toList();
      return new Month(world, judge(world, before, LAST_MONTH));
    }

    private Outcome without(Export left) {
      return judge(world, others(left), THIS_MONTH);
    }

    /** What a full export left out is told by the source's next one, if it is still so. */
    private List<Export> others(Export left) {
      return world.exports().stream()
          .filter(export -> !export.equals(left))
          .map(export -> export.equals(next(left)) ? export.restating(left) : export)
          .toList();
    }

    private Export next(Export left) {
      return world.exports().stream()
          .filter(e -> e.source().equals(left.source()) && e.date().isAfter(left.date()))
          .findFirst()
          .orElse(left);
    }

    /** Whether it is new, and not so with what the export says to the point. */
    boolean wouldBeSpokenAgainst(Finding finding, Export left) {
      return !isFound(finding, last)
          && !wasHidden(finding)
          && canBeMissed(finding, left)
          && !isOpen(finding, judge(world, with(finding.kind(), left), THIS_MONTH));
    }

    /** What was so a month ago, behind something more pressing, does not open by showing now. */
    private boolean wasHidden(Finding finding) {
      return about(finding, last)
          .filter(one -> one.finding().isPresent() && one.notJudged().isEmpty())
          .anyMatch(one -> one.undecided().contains(finding.kind()));
    }

    private List<Export> with(FindingKind kind, Export left) {
      Predicate<Fact> against = AGAINST.getOrDefault(kind, fact -> true);
      Stream<ChipEvent> lasting =
          next(left).equals(left) ? left.events().stream() : left.lastingUpTo(next(left));
      Export told = left.with(lasting.filter(event -> against.test(event.fact())).toList());
      return Stream.concat(others(left).stream(), Stream.of(told)).toList();
    }

    private boolean canBeMissed(Finding finding, Export left) {
      FindingKind kind = finding.kind();
      if (isRegistry(left)) {
        return !OF_NO_SILENCE.contains(kind);
      }
      return switch (kind) {
        case STOCK_UNACCOUNTED -> true;
        case SCAN_OVERDUE -> notesScans(left) && speaksOf(finding, left);
        case NON_ISO_ONLY -> speaksOf(finding, left);
        case TRAIL_ENDS_AT_PURCHASER -> isOf(finding.actor(), left) || speaksOf(finding, left);
        default -> false;
      };
    }

    /** Whether other exports of the source say something of the animal. */
    private boolean speaksOf(Finding finding, Export left) {
      EventLog log = World.log(others(left), 10);
      Sources sources = Sources.of(log.snapshot().markers(), Scope.asOf(THIS_MONTH));
      return new AllAnimals(
              log.snapshot(), new Cast(world.people(), sources), new Workers(1), () -> {})
          .ask(new SpokenOf(finding, left)).answers().stream().anyMatch(said -> said);
    }
  }

  private record SpokenOf(Finding finding, Export left) implements AllAnimals.Question<Boolean> {
    @Override
    public boolean concerns(Statement statement) {
      return true;
    }

    @Override
    public Stream<Boolean> ask(Animal animal) {
      return Stream.of(
          animal.anchor().equals(finding.chips().get(0))
              && animal.statements().stream().anyMatch(s -> s.source().equals(left.source())));
    }
  }

  private static boolean notesScans(Export export) {
    return export.source().value().endsWith("-filled");
  }

  private static boolean isOf(OrganisationId organisation, Export export) {
    return export.source().value().split("-")[0].equals(organisation.value());
  }

  private static boolean isRegistry(Export export) {
    return Set.of("north", "south").contains(export.source().value());
  }

  private static Outcome judge(World world, List<Export> exports, LocalDate asOf) {
    return world.reconciliation(1).judge(World.log(exports, 10).snapshot(), Scope.asOf(asOf));
  }

  /** Whether it is found, or holds and is hidden, or can't be judged. */
  private static boolean isOpen(Finding finding, Outcome outcome) {
    return isFound(finding, outcome)
        || about(finding, outcome).anyMatch(one -> one.undecided().contains(finding.kind()))
        || outcome.records().undecided().contains(finding.caseKey());
  }

  private static boolean isFound(Finding finding, Outcome outcome) {
    return outcome.findings().stream()
        .anyMatch(one -> asked(one.caseKey()).equals(asked(finding.caseKey())));
  }

  private static Stream<Assessment> about(Finding finding, Outcome outcome) {
    return outcome.assessments().stream()
        .filter(one -> one.chips().stream().anyMatch(finding.chips()::contains));
  }

  /** That a registration was paid for changes what is said about the same missing one. */
  private static CaseKey asked(CaseKey key) {
    return key.rule().equals("prepaid-unused")
        ? new CaseKey("unregistered", key.anchor(), key.actor(), key.recordKey())
        : key;
  }
}
