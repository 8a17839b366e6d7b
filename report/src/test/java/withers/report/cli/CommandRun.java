package withers.report.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine;
import withers.cli.Console;
import withers.cli.Environment;
import withers.cli.Operator;
import withers.report.demo.Home;
import withers.report.send.Pause;

/** A command that was run as users run it, at half past six on the first of March 2026. */
record CommandRun(int code, String out, String err) {
  static final Instant NOW = Instant.parse("2026-03-01T06:30:00Z");

  static CommandRun of(String... args) {
    return of(new Home(Optional.empty()), args);
  }

  static CommandRun at(Path home, String... args) {
    return of(new Home(Optional.of(home), "bin/withers"), args);
  }

  /** With somebody at the terminal, and waits that take no time. */
  static CommandRun with(Operator operator, Pause pause, String... args) {
    return of(new Home(Optional.empty()), operator, pause, args);
  }

  /** So many days later. */
  static CommandRun after(int days, String... args) {
    Instant then = NOW.plus(Duration.ofDays(days));
    return at(then, new Home(Optional.empty()), Operator.NOBODY, time -> {}, args);
  }

  /** On another day, at the same hour. */
  static CommandRun on(LocalDate day, String... args) {
    return at(hour(day), new Home(Optional.empty()), Operator.NOBODY, time -> {}, args);
  }

  /** The hour at which commands are run. */
  static Instant hour(LocalDate day) {
    return day.atTime(NOW.atOffset(ZoneOffset.UTC).toLocalTime()).toInstant(ZoneOffset.UTC);
  }

  private static CommandRun of(Home home, String... args) {
    return of(home, Operator.NOBODY, time -> {}, args);
  }

  private static CommandRun of(Home home, Operator operator, Pause pause, String... args) {
    return at(NOW, home, operator, pause, args);
  }

  private static CommandRun at(
      Instant now, Home home, Operator operator, Pause pause, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code =
        new Application(
                new Console(stream(out), stream(err), false),
                Clock.fixed(now, ZoneOffset.UTC),
                new Environment(Map.of()),
                home,
                operator,
                pause)
            .execute(args);
    return new CommandRun(code, text(out), text(err));
  }

  /** All commands, with nobody who listens. */
  static CommandLine commandLine() {
    return new Application(
            new Console(
                stream(new ByteArrayOutputStream()), stream(new ByteArrayOutputStream()), false),
            Clock.fixed(NOW, ZoneOffset.UTC),
            new Environment(Map.of()),
            new Home(Optional.empty()),
            Operator.NOBODY,
            time -> {})
        .commandLine();
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }

  private static String text(ByteArrayOutputStream bytes) {
    return bytes.toString(StandardCharsets.UTF_8).replace(System.lineSeparator(), "\n");
  }
}
