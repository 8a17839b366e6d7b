package withers.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ProgressTest {
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @Test
  void a_terminal_shows_a_bar_that_ends_full() {
    work(console(true), 1_000);

    assertThat(err.toString(StandardCharsets.UTF_8))
        .startsWith("\rReading ")
        .containsPattern("\rReading +100% \\[=+\\] 1000/1000 [^\r]*$");

    assertThat(out.size()).isZero();
  }

  @Test
  void a_task_of_unknown_length_counts_its_steps() {
    work(console(true), 0);

    assertThat(err.toString(StandardCharsets.UTF_8)).contains("1000/");
  }

  @Test
  void elsewhere_nothing_is_shown() {
    work(console(false), 1_000);

    assertThat(err.size()).isZero();
    assertThat(out.size()).isZero();
  }

  private static void work(Console console, long total) {
    try (Progress progress = console.progress("Reading", total)) {
      for (int i = 0; i < 10; i++) {
        progress.advance(100);
      }
    }
  }

  private Console console(boolean isTerminal) {
    return new Console(
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8),
        isTerminal);
  }
}
