package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import withers.cases.Anchor;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;
import withers.codec.Streams;
import withers.codec.finding.AssessmentPacking;
import withers.custody.Cast;
import withers.finding.Evidence;
import withers.finding.Finding;
import withers.finding.Newer;
import withers.finding.Stock;
import withers.finding.Who;
import withers.history.Animal;
import withers.history.History;
import withers.history.Scope;
import withers.history.Sources;
import withers.id.SourceId;
import withers.log.LogSnapshot;
import withers.packed.Common;
import withers.packed.Gathering;
import withers.packed.Packing;
import withers.registration.Registries;
import withers.rule.Assessment;
import withers.rule.Rules;
import withers.slip.Candidates;
import withers.supply.Supplies;
import withers.world.AnyEvents;
import withers.world.RandomWorld;
import withers.world.World;

/** What was packed comes out as it was, whatever worlds it is of. */
@TestInstance(Lifecycle.PER_CLASS)
@DisplayNameGeneration(ReplaceUnderscores.class)
class PackingTest {
  private static final int SEEDS = 60;
  private static final int CHIPS = 12;
  private static final Scope SCOPE = Scope.asOf(LocalDate.of(2026, 10, 1));

  private final List<History> histories = new ArrayList<>();
  private final List<Assessment> assessments = new ArrayList<>();

  @BeforeAll
  void judges_worlds() {
    for (long seed = 0; seed < SEEDS; seed++) {
      judge(World.of(RandomWorld.lines(seed, CHIPS, 0)));
      judge(AnyEvents.world(seed, 60));
    }
  }

  /** Every number alone, and with the next one: there may be too many or too few on an animal. */
  private void judge(World world) {
    LogSnapshot log = world.log().snapshot();
    Sources sources = Sources.of(log.markers(), SCOPE);
    Cast cast = new Cast(world.people(), sources);
    Rules rules =
        new Rules(new Registries(World.DIRECTORY, cast, World.PERIODS), Supplies.read(log, cast));
    List<History> all = histories(new PartitionReader(log, sources));
    histories.addAll(all);
    Candidates.Part aside = new Candidates.Part();
    List<History> spoken = all.stream().filter(one -> !one.statements().isEmpty()).toList();
    for (int i = 0; i < spoken.size(); i++) {
      for (int chips = 1; chips <= Math.min(2, spoken.size() - i); chips++) {
        assessments.add(rules.assess(Animal.of(spoken.subList(i, i + chips)), aside));
      }
    }
  }

  private static List<History> histories(PartitionReader reader) {
    return IntStream.range(0, Streams.CHIPS.partitions())
        .boxed()
        .flatMap(reader::everSpokenOf)
        .toList();
  }

  private static <T> List<T> packed(Packing<T> packing, List<T> values) {
    Gathering<T> gathering = new Gathering<>(packing, new Common());
    gathering.addAll(values);
    return gathering.list();
  }

  @Test
  void histories_come_out_as_they_were() {
    assertThat(histories).anyMatch(one -> one.statements().isEmpty());
    assertThat(histories).anyMatch(one -> one.turned().isPresent());
    assertThat(histories).anyMatch(History::lasting);
    assertThat(statements()).anyMatch(listed -> listed).anyMatch(listed -> !listed);

    assertThat(packed(new HistoryPacking(), histories)).isEqualTo(histories);
  }

  private Stream<Boolean> statements() {
    return histories.stream().flatMap(one -> one.statements().stream()).map(one -> one.listed());
  }

  @Test
  void assessments_come_out_as_they_were() {
    assertThat(assessments).anyMatch(Assessment::isClear);
    assertThat(assessments).anyMatch(one -> one.chips().size() > 1);
    assertThat(assessments).anyMatch(one -> one.undecided().size() > 1);
    assertThat(assessments).anyMatch(one -> one.notJudged().size() > 1);
    assertThat(assessments).anyMatch(one -> one.question().isPresent());

    assertThat(packed(new AssessmentPacking(), assessments)).isEqualTo(assessments);
  }

  /** Nobody settles anything in these worlds. */
  @Test
  void findings_that_are_held_back_come_out_as_they_were() {
    List<Assessment> settled =
        findings()
            .map(
                one ->
                    new Assessment(
                        one.chips(),
                        Optional.empty(),
                        Set.of(),
                        Set.of(),
                        Optional.empty(),
                        List.of(one, one)))
            .toList();

    assertThat(packed(new AssessmentPacking(), settled)).isEqualTo(settled);
  }

  @Test
  void the_worlds_have_all_that_a_finding_may_tell() {
    assertThat(findings()).anyMatch(one -> one.newer().filter(Newer.RECORDS::equals).isPresent());
    assertThat(findings()).anyMatch(one -> one.animalName().isPresent());
    assertThat(findings()).anyMatch(one -> one.actorRecord().isPresent());
    assertThat(findings()).anyMatch(one -> one.actorRecord().isEmpty());
    assertThat(findings()).anyMatch(one -> !one.fields().isEmpty());
    assertThat(findings().flatMap(one -> one.registered().stream()))
        .anyMatch(one -> one.compared().isPresent())
        .anyMatch(one -> one.compared().isEmpty());
    assertThat(findings().flatMap(one -> one.evidence().stream()).map(Evidence::who))
        .hasAtLeastOneElementOfType(Who.Person.class)
        .hasAtLeastOneElementOfType(Who.Organisation.class)
        .hasAtLeastOneElementOfType(Who.Outside.class)
        .hasAtLeastOneElementOfType(Who.Nobody.class);
  }

  private Stream<Finding> findings() {
    return assessments.stream().flatMap(one -> one.finding().stream());
  }

  /** Findings about records are not packed today; they could be. */
  @Test
  void a_finding_about_a_box_comes_out_as_it_was() {
    ChipNumber first = ChipNumber.iso(999, 100);
    ChipNumber last = ChipNumber.iso(999, 199);
    Finding some = findings().findFirst().orElseThrow();
    Finding ofBox =
        new Finding(
            some.kind(),
            new Anchor.Source(new SourceId("works")),
            List.of(),
            some.species(),
            Optional.empty(),
            some.actor(),
            Optional.empty(),
            new Who.Nobody(),
            List.of(),
            List.of(),
            some.certainty(),
            some.priority(),
            some.evidence(),
            Optional.of(new Stock(new NumberRange(first, last), List.of(first), 100)));
    Assessment assessment =
        new Assessment(
            List.of(first), Optional.of(ofBox), Set.of(), Set.of(), Optional.empty(), List.of());

    assertThat(packed(new AssessmentPacking(), List.of(assessment))).containsExactly(assessment);
  }
}
