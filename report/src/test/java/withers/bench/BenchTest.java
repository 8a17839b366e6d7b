package withers.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.cli.Console;

/** The benchmark on a few rows: that it runs and adds up. Times are not looked at. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Tag("benchmark")
class BenchTest {

  private static final Instant NOW = Instant.parse("2026-10-05T08:00:00Z");

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @Test
  void every_stage_runs_and_all_adds_up(@TempDir Path folder) {
    BenchRun run = bench("--rows", "3000", "--in-process", "--folder", folder.toString());

    assertThat(run.stages().stream().map(Measured::stage))
        .containsExactlyElementsOf(Arrays.stream(Stage.values()).map(Stage::word).toList());
    assertThat(run.stages()).allMatch(stage -> stage.count() > 0 && stage.seconds() > 0);
    assertThat(run.of(Stage.READ_LINES).count()).isBetween(2700L, 3700L);
    assertThat(run.of(Stage.FIRST_IMPORT).counted("applied")).isGreaterThan(2700);
    assertThat(run.of(Stage.IMPORT_UNCHANGED).counted("applied")).isZero();
    assertThat(run.of(Stage.NEXT_IMPORT).counted("events"))
        .isBetween(1L, run.of(Stage.FIRST_IMPORT).counted("events") / 4);
    assertThat(run.of(Stage.JUDGE_ON_1).counted("findings")).isPositive();
    assertThat(run.startedAt()).isEqualTo(NOW);
  }

  @Test
  void a_stage_has_a_JVM_of_its_own_and_of_two_rounds_the_least_counts() {
    BenchRun run =
        bench("--rows", "500", "--heap", "64m", "--rounds", "2", "--stages", "read-lines");
    assertThat(run.stages()).hasSize(1);
    assertThat(run.of(Stage.READ_LINES).peakBytes()).isPresent();
  }

  private BenchRun bench(String... arguments) {
    Console console = new Console(stream(out), stream(err), false);
    int exit = Bench.commandLine(console, Clock.fixed(NOW, ZoneOffset.UTC)).execute(arguments);
    assertThat(exit).as(text(err)).isZero();
    return text(out)
        .lines()
        .filter(line -> line.startsWith("{"))
        .map(BenchJson::readRun)
        .findFirst()
        .orElseThrow();
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }

  private static String text(ByteArrayOutputStream bytes) {
    return bytes.toString(StandardCharsets.UTF_8);
  }
}
