package withers.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import withers.cli.Console;

/** The benchmark of re-imports on a few rows: that it runs and adds up. Times are not looked at. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ReimportTest {

  @Test
  void recognises_all_that_did_not_change(@TempDir Path folder) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Console console = new Console(stream(out), stream(err), false);

    int exit =
        new CommandLine(new Reimport(console))
            .execute(
                "--rows", "3000", "--warm-up", "1", "--rounds", "2", "--folder", folder.toString());

    assertThat(exit).as(err.toString(StandardCharsets.UTF_8)).isZero();
    List<String> lines = out.toString(StandardCharsets.UTF_8).lines().toList();
    assertThat(lines).hasSize(1 + 1 + 3 * 3 + 1);
    assertThat(lines.get(1)).startsWith("first import").contains("0 recognised, 3,000 applied");
    assertThat(lines.get(3)).startsWith("import unchanged").contains("3,000 recognised, 0 applied");
    assertThat(lines.get(4)).startsWith("import, 0.5 % changed").doesNotContain(" 0 applied");
    assertThat(lines.subList(2, 5)).allMatch(line -> line.endsWith("(warm-up)"));
    assertThat(lines.subList(5, 12)).noneMatch(line -> line.endsWith("(warm-up)"));
    assertThat(lines.get(11)).startsWith("medians of 2 rounds: ");
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }
}
