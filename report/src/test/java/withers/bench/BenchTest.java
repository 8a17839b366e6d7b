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
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import withers.cli.Console;

/** The benchmark on a few rows: that it runs and adds up. Times are not looked at. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Tag("benchmark")
class BenchTest {

  private static final Instant NOW = Instant.parse("2026-10-05T08:00:00Z");

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @Test
  void runs_every_stage_in_a_JVM_of_its_own_and_adds_up(@TempDir Path folder) {
    int exit = bench("--rows", "5000", "--heap", "256m", "--folder", folder.toString());

    assertThat(exit).as(text(err)).isZero();
    List<String> lines = text(out).lines().toList();
    BenchRun run = BenchJson.readRun(lines.get(lines.size() - 1));
    assertThat(run.stages().stream().map(Measured::stage))
        .containsExactlyElementsOf(Arrays.stream(Stage.values()).map(Stage::word).toList());
    assertThat(run.stages()).allMatch(stage -> stage.count() > 0 && stage.seconds() > 0);
    assertThat(run.of(Stage.READ_LINES).count()).isBetween(4500L, 5500L);
    assertThat(run.of(Stage.FIRST_IMPORT).counted("applied")).isGreaterThan(4500);
    assertThat(run.of(Stage.IMPORT_UNCHANGED).counted("applied")).isZero();
    assertThat(run.of(Stage.NEXT_IMPORT).counted("events"))
        .isBetween(1L, run.of(Stage.FIRST_IMPORT).counted("events") / 2);
    assertThat(run.of(Stage.JUDGE_ON_1).counted("findings")).isPositive();
    assertThat(run.startedAt()).isEqualTo(NOW);
    assertThat(lines).hasSizeGreaterThan(Stage.values().length);
  }

  private int bench(String... arguments) {
    Console console = new Console(stream(out), stream(err), false);
    return new CommandLine(new Bench(console, Clock.fixed(NOW, ZoneOffset.UTC)))
        .setCaseInsensitiveEnumValuesAllowed(true)
        .execute(arguments);
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }

  private static String text(ByteArrayOutputStream bytes) {
    return bytes.toString(StandardCharsets.UTF_8);
  }
}
