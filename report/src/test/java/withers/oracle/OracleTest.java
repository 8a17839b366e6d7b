package withers.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import withers.demo.DemoWorld;
import withers.demo.Fixtures;
import withers.finding.FindingKind;

/**
 * The tool against the oracle, animal by animal. {@code -Doracle.seeds=N} asks for more worlds,
 * {@code -Doracle.animals=N} for larger ones; see docs/oracle.md.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Tag("long")
class OracleTest {

  private static final Path DEMO = Fixtures.folder().resolve("demo");
  private static final List<Month> SENSIBLE = List.of(Month.SEPTEMBER, Month.OCTOBER);

  private static final int ANIMALS = Integer.getInteger("oracle.animals", 1000);

  @TempDir private Path folder;

  static LongStream seeds() {
    return LongStream.rangeClosed(1, Long.getLong("oracle.seeds", 2));
  }

  @Test
  void agrees_on_every_animal_of_the_demo() throws Exception {
    assertThat(differences(DEMO, SENSIBLE)).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void agrees_on_every_animal_of_another_world(long seed) throws Exception {
    Path world = folder.resolve("world");
    DemoWorld.generate(seed, ANIMALS, world);
    assertThat(differences(world, SENSIBLE)).as("seed %d", seed).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void agrees_on_every_animal_of_a_world_in_turmoil(long seed) throws Exception {
    assertThat(differences(turmoil(seed), Month.ALL)).as("seed %d", seed).isEmpty();
  }

  @Test
  void every_kind_is_found_in_the_demo() throws Exception {
    try (Oracle oracle = Oracle.judging(DEMO, Month.OCTOBER)) {
      assertThat(oracle.answers())
          .extracting(Answer::kind)
          .contains(kinds().toArray(String[]::new));
    }
  }

  @Test
  void turmoil_puts_the_sentences_to_work_that_a_sensible_world_leaves_alone() throws Exception {
    try (Oracle oracle = Oracle.judging(turmoil(1), Month.DECEMBER)) {
      for (String table :
          List.of(
              "put_aside",
              "corrected",
              "withdrawal",
              "disappearance",
              "unlisted",
              "link",
              "repaired",
              "damaged_second",
              "cut_number",
              "taken_at_its_word",
              "damaged_record",
              "next_custodian",
              "repeated",
              "in_doubt",
              "death WHERE contradicted",
              "scan",
              "mistyped_pair",
              "diverging_pair",
              "someone WHERE someone.kind = 'nobody'",
              "supply")) {
        assertThat(oracle.count(table)).as(table).isPositive();
      }
    }
  }

  /** The key {@code log} of the workspace's settings, or nothing. */
  String log() {
    return "";
  }

  private static List<String> kinds() {
    return Stream.of(FindingKind.values()).map(FindingKind::word).toList();
  }

  private Path turmoil(long seed) throws Exception {
    Path world = folder.resolve("world");
    DemoWorld.generate(seed, 300, world);
    Turmoil turmoil = new Turmoil(seed);
    turmoil.stir(world, Month.NOVEMBER);
    turmoil.stir(world, Month.DECEMBER);
    return world;
  }

  /** Judges each month when its exports came in, and at last looks back. */
  private List<String> differences(Path world, List<Month> months) throws Exception {
    Pipeline pipeline = new Pipeline(world, folder.resolve("workspace"), log());
    List<String> differences = new ArrayList<>();
    for (Month month : months) {
      pipeline.receive(world.resolve(month.folder()), month.asOf());
      differences.addAll(differences(pipeline, world, month, month.asOf(), month.asOf()));
    }
    Month last = months.get(months.size() - 1);
    LocalDate before = last.asOf().minusDays(17);
    differences.addAll(differences(pipeline, world, last, before, last.asOf()));
    differences.addAll(differences(pipeline, world, last, last.asOf(), before));
    return differences;
  }

  private static List<String> differences(
      Pipeline pipeline, Path world, Month received, LocalDate asOf, LocalDate knownBy)
      throws Exception {
    try (Oracle oracle = Oracle.judging(received.foldersUpToHere(world), asOf, knownBy)) {
      return Difference.between(
          "as of %s, known by %s".formatted(asOf, knownBy),
          pipeline.judge(asOf, knownBy),
          oracle.answers());
    }
  }
}
