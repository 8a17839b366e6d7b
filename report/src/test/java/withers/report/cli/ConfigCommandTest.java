package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ConfigCommandTest {
  @TempDir private Path folder;

  @BeforeEach
  void makes_a_workspace() throws IOException {
    SmallNetwork.in(folder, 25);
  }

  @Test
  void a_configuration_without_mistakes_is_told_so() {
    assertThat(config("check"))
        .isEqualTo(new CommandRun(0, "No mistakes: 5 organisations, 0 jobs.\n", ""));
  }

  @Test
  void mistakes_of_profiles_and_of_files_that_settings_name_are_told_together() throws IOException {
    append("sources/stays.yaml", "kinds: shelter\n");
    append("withers.yaml", "matching: own.yaml\n");

    CommandRun check = config("check");

    assertThat(check.code()).isEqualTo(3);
    assertThat(check.err())
        .startsWith("withers: The configuration has 2 mistakes:\n  Expected one of ")
        .contains("but found \"kinds\" (sources/stays.yaml, line 17, column 1)")
        .contains("\n  Expected a file, but found none (own.yaml)\n");
    assertThat(check.out()).isEmpty();
  }

  @Test
  void what_counts_is_shown_with_where_it_comes_from() {
    CommandRun show = config("show");

    assertThat(show.code()).isZero();
    assertThat(show.out().lines().map(line -> line.replaceAll(" {2,}", "  ")))
        .contains(
            "network  Coast Network  withers.yaml, line 1, column 10",
            "list-cap  4  withers.yaml, line 8, column 11",
            "grace-days  30  default",
            "matching  none  default",
            "mail.server.security  none  withers.yaml, line 12, column 49");
    assertThat(config("show", "--json").out())
        .contains("{\"key\":\"grace-days\",\"value\":\"30\",\"from\":\"default\"}\n");
  }

  @Test
  void what_to_do_has_to_be_said() {
    assertThat(CommandRun.of("config").code()).isEqualTo(2);
  }

  private void append(String file, String line) throws IOException {
    Files.writeString(folder.resolve(file), Files.readString(folder.resolve(file)) + line);
  }

  private CommandRun config(String what, String... more) {
    return CommandRun.of(
        Stream.concat(Stream.of("config", what, "--workspace", folder.toString()), Stream.of(more))
            .toArray(String[]::new));
  }
}
