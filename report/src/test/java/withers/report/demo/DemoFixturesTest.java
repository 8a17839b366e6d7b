package withers.report.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DemoFixturesTest {
  @TempDir private Path home;

  @Test
  void rounds_and_their_exports_come_in_order() throws IOException {
    DemoFixtures demo = demo("rounds:\n  - {name: May, folder: m5, as-of: 2026-05-01}\n");
    Path folder = Files.createDirectory(home.resolve("fixtures/demo/m5"));
    Files.createFile(folder.resolve("b.csv"));
    Files.createFile(folder.resolve("a.csv"));

    Round may = new Round("May", "m5", LocalDate.of(2026, 5, 1));
    assertThat(demo.rounds()).containsExactly(may);
    assertThat(demo.exports(may)).containsExactly(folder.resolve("a.csv"), folder.resolve("b.csv"));
    assertThat(demo.workspace()).isEqualTo(home.resolve("fixtures/demo/workspace"));
  }

  @Test
  void mistakes_in_the_rounds_are_told_with_their_place() throws IOException {
    DemoFixtures demo = demo("rounds:\n  - {name: May, folder: m5, as-of: May}\n");

    assertThatThrownBy(demo::rounds)
        .hasMessageContaining("Expected a date as YYYY-MM-DD, but found \"May\"")
        .hasMessageContaining("rounds.yaml, line 2");
  }

  @Test
  void without_the_project_s_folder_it_says_how_to_start_the_demo() {
    assertThatThrownBy(() -> DemoFixtures.of(new Home(Optional.empty())))
        .hasMessageContaining("Expected the demo's files, but found none (fixtures/demo)")
        .hasMessageContaining(
            "start the demo with the launcher of a whole copy of the project: ./withers demo");
    assertThatThrownBy(() -> DemoFixtures.of(new Home(Optional.of(home))))
        .hasMessageContaining("(" + home.resolve("fixtures/demo") + ")");
  }

  private DemoFixtures demo(String rounds) throws IOException {
    Path folder = Files.createDirectories(home.resolve("fixtures/demo"));
    Files.writeString(folder.resolve("rounds.yaml"), rounds);
    return DemoFixtures.of(new Home(Optional.of(home)));
  }
}
