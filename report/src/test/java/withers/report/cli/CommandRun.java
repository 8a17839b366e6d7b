package withers.report.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import withers.cli.Console;
import withers.cli.Environment;
import withers.report.demo.Home;

/** A command that was run as users run it, at half past six on the first of March 2026. */
record CommandRun(int code, String out, String err) {
  static final Instant NOW = Instant.parse("2026-03-01T06:30:00Z");

  static CommandRun of(String... args) {
    return of(new Home(Optional.empty()), args);
  }

  static CommandRun at(Path home, String... args) {
    return of(new Home(Optional.of(home)), args);
  }

  private static CommandRun of(Home home, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code =
        Application.commandLine(
                new Console(stream(out), stream(err), false),
                Clock.fixed(NOW, ZoneOffset.UTC),
                new Environment(Map.of()),
                home)
            .execute(args);
    return new CommandRun(code, text(out), text(err));
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }

  private static String text(ByteArrayOutputStream bytes) {
    return bytes.toString(StandardCharsets.UTF_8).replace(System.lineSeparator(), "\n");
  }
}
