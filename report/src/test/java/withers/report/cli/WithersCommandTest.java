package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import withers.cli.Console;
import withers.cli.Environment;
import withers.cli.Operator;
import withers.cli.UsageCheck;
import withers.report.demo.Home;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class WithersCommandTest {
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private final CommandLine command =
      Application.commandLine(
          new Console(stream(out), stream(err), false),
          Clock.fixed(Instant.parse("2031-03-01T12:00:00Z"), ZoneOffset.UTC),
          new Environment(Map.of()),
          new Home(Optional.empty()),
          Operator.NOBODY,
          time -> {});

  @Test
  void version_is_the_one_that_was_built() {
    assertThat(command.execute("--version")).isZero();
    assertThat(command.execute("init", "--version")).isZero();

    assertThat(out.toString(StandardCharsets.UTF_8))
        .matches("(Withers \\d+\\.\\d+\\.\\d+(-SNAPSHOT)?\\R){2}");
  }

  @Test
  void no_command_is_a_mistake_of_usage() {
    assertThat(command.execute()).isEqualTo(2);

    assertThat(err)
        .hasToString(
            "withers: Expected a command, but found none%n\"withers --help\" explains it.%n"
                .formatted());
  }

  @Test
  void every_command_s_help_shows_an_example() {
    assertThat(command.getSubcommands())
        .containsOnlyKeys(
            "init",
            "ingest",
            "inspect",
            "rekey",
            "look-up",
            "calibrate",
            "reconcile",
            "work",
            "report",
            "deliveries",
            "run",
            "check",
            "trace",
            "explain",
            "settle",
            "snooze",
            "schedule",
            "about",
            "forget",
            "readmit",
            "confidential",
            "tidy",
            "backup",
            "restore",
            "verify",
            "log",
            "status",
            "config",
            "manual",
            "demo");
    UsageCheck.everyCommandShowsAnExample(command);
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }
}
