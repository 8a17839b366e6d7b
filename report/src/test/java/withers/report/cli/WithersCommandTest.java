package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class WithersCommandTest {
  private final StringWriter out = new StringWriter();
  private final CommandLine command =
      new CommandLine(new WithersCommand()).setOut(new PrintWriter(out));

  @Test
  void version_is_the_one_that_was_built() {
    assertThat(command.execute("--version")).isZero();

    assertThat(out.toString()).matches("Withers \\d+\\.\\d+\\.\\d+(-SNAPSHOT)?\\R");
  }
}
