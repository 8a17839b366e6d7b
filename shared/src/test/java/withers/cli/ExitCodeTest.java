package withers.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ExitCodeTest {

  @Test
  void the_documented_table_is_the_enum() throws IOException {
    String page = Files.readString(Path.of("../docs/exit-codes.md"));

    assertThat(page.lines().filter(line -> line.matches("\\| \\d+ \\|.*")))
        .containsExactlyElementsOf(
            Arrays.stream(ExitCode.values()).map(ExitCodeTest::row).toList());
  }

  @Test
  void no_two_codes_share_a_number_and_none_looks_like_a_signal_or_the_launcher() {
    assertThat(ExitCode.values())
        .extracting(ExitCode::number)
        .doesNotHaveDuplicates()
        .allSatisfy(number -> assertThat(number).isBetween(0, 89));
  }

  private static String row(ExitCode code) {
    return "| %d | `%s` | %s |".formatted(code.number(), code, code.meaning());
  }
}
