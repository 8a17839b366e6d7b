package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntSupplier;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import withers.cli.Console;
import withers.cli.Environment;
import withers.cli.Operator;
import withers.cli.UsageCheck;
import withers.reconcile.cli.TraceCommand;
import withers.report.demo.Home;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class WithersCommandTest {
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private final Application application =
      new Application(
          new Console(stream(out), stream(err), false),
          Clock.fixed(Instant.parse("2031-03-01T12:00:00Z"), ZoneOffset.UTC),
          new Environment(Map.of()),
          new Home(Optional.empty()),
          Operator.NOBODY,
          time -> {});
  private final CommandLine command = application.commandLine();

  @Test
  void version_is_the_one_that_was_built() {
    assertThat(command.execute("--version")).isZero();
    assertThat(command.execute("init", "--version")).isZero();

    assertThat(out.toString(StandardCharsets.UTF_8))
        .matches("(Withers \\d+\\.\\d+\\.\\d+(-SNAPSHOT)?\\R){2}");
  }

  @Test
  void a_command_set_up_alone_is_the_same_as_among_all() {
    for (String name : command.getSubcommands().keySet()) {
      assertThat(said(() -> application.execute(name, "--help")))
          .isEqualTo(said(() -> command.execute(name, "--help")))
          .contains("Usage: withers " + name);
      assertThat(said(() -> application.execute(name, "--no-such-option")))
          .isEqualTo(said(() -> command.execute(name, "--no-such-option")))
          .contains("\"withers %s --help\" explains it.".formatted(name));
    }
    for (String word : List.of("--version", "-V", "--help", "trase", "--trace-errors", "")) {
      assertThat(said(() -> application.execute(word)))
          .isEqualTo(said(() -> command.execute(word)))
          .isNotEmpty();
    }
  }

  @Test
  void no_more_is_set_up_than_what_was_typed_needs() {
    assertThat(WithersCommand.neededFor("trace", "999010900000101"))
        .containsExactly(TraceCommand.class);
    assertThat(WithersCommand.neededFor("--version")).isEmpty();
    assertThat(WithersCommand.neededFor("manual", "folder")).isEqualTo(WithersCommand.all());
    assertThat(WithersCommand.neededFor("trase")).isEqualTo(WithersCommand.all());
    assertThat(WithersCommand.neededFor()).isEqualTo(WithersCommand.all());
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

  /** What a command says, on both streams, and how it ends. */
  private String said(IntSupplier run) {
    out.reset();
    err.reset();
    int code = run.getAsInt();
    return code
        + "\n"
        + out.toString(StandardCharsets.UTF_8)
        + err.toString(StandardCharsets.UTF_8);
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }
}
