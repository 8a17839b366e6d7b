package withers.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withers.demo.DemoWorld;
import withers.demo.Fixtures;

/** The tool against the oracle, animal by animal. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class OracleTest {

  private static final List<Month> SENSIBLE = List.of(Month.SEPTEMBER, Month.OCTOBER);

  @Test
  void agrees_on_every_animal_of_the_demo(@TempDir Path folder) throws Exception {
    assertThat(differences(Fixtures.folder().resolve("demo"), folder, SENSIBLE)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void agrees_on_every_animal_of_another_world(long seed, @TempDir Path folder) throws Exception {
    Path world = folder.resolve("world");
    DemoWorld.generate(seed, 1000, world);
    assertThat(differences(world, folder, SENSIBLE)).as("seed %d", seed).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void agrees_on_every_animal_of_a_world_in_turmoil(long seed, @TempDir Path folder)
      throws Exception {
    Path world = folder.resolve("world");
    DemoWorld.generate(seed, 300, world);
    Turmoil turmoil = new Turmoil(seed);
    turmoil.stir(world, Month.NOVEMBER);
    turmoil.stir(world, Month.DECEMBER);
    assertThat(differences(world, folder, Month.ALL)).as("seed %d", seed).isEmpty();
  }

  private static List<String> differences(Path world, Path folder, List<Month> months)
      throws Exception {
    Pipeline pipeline = new Pipeline(world, folder.resolve("workspace"));
    List<String> differences = new ArrayList<>();
    for (Month month : months) {
      Set<Answer> tool = pipeline.month(world.resolve(month.folder()), month.asOf());
      try (Oracle oracle = Oracle.judging(world, month)) {
        differences.addAll(Difference.between(month, tool, oracle.answers()));
      }
    }
    return differences;
  }
}
