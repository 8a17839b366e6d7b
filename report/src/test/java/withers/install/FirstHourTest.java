package withers.install;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/** A stranger who has the zip, and types what {@code docs/first-hour.md} says. */
@Tag("install")
@EnabledIfSystemProperty(
    named = Zip.PROPERTY,
    matches = ".+",
    disabledReason = "the profile dist builds a zip")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class FirstHourTest {
  private static final Path PAGE = Path.of("..", "docs", "first-hour.md");

  @TempDir private Path folder;

  @Test
  @Timeout(value = 10, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
  void each_command_of_the_page_works_and_shows_what_the_page_shows() throws Exception {
    Page page = Page.read(PAGE);
    assertThat(page.steps()).hasSizeGreaterThan(10);
    try (Shell shell = new Shell(Zip.on(folder))) {
      assertThat(shell.type("command -v java").code()).as("no Java is there").isEqualTo(1);
      for (Page.Step step : page.steps()) {
        StringBuilder output = new StringBuilder();
        for (String command : step.commands()) {
          Shell.Answer answer = shell.type(command);
          output.append(answer.output());
          assertThat(answer.code()).as("%s\n%s", command, answer.output()).isIn(0, 1);
        }
        assertThat(output.toString())
            .as("what %s shows", step.commands())
            .matches(step.shown().isEmpty() ? Shown.ANYTHING : Shown.asPattern(step.shown()));
      }
    }
  }
}
