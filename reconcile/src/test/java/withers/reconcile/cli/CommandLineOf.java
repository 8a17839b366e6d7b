package withers.reconcile.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.Command;
import withers.cli.CommandFactory;
import withers.cli.Console;
import withers.cli.Environment;
import withers.cli.ErrorHandler;
import withers.cli.WithersCommandLine;

/** This module's commands, run as users run them in one workspace, and all that they said. */
final class CommandLineOf {

  @Command(
      name = "withers",
      subcommands = {
        ReconcileCommand.class,
        TraceCommand.class,
        CheckCommand.class,
        CalibrateCommand.class
      })
  private static final class Root {}

  private final Path folder;
  private final Clock clock;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  CommandLineOf(Path folder, Clock clock) {
    this.folder = folder;
    this.clock = clock;
  }

  /** Runs a command, and returns its exit code. */
  int run(String command, String... options) {
    Console console = new Console(stream(out), stream(err), false);
    CommandFactory factory = CommandFactory.handing(console, clock, new Environment(Map.of()));
    List<String> all = new ArrayList<>(List.of(command, "--workspace", folder.toString()));
    all.addAll(List.of(options));
    return WithersCommandLine.of(Root.class, factory, console, ErrorHandler.standard())
        .execute(all.toArray(String[]::new));
  }

  String out() {
    return out.toString(StandardCharsets.UTF_8);
  }

  String err() {
    return err.toString(StandardCharsets.UTF_8);
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }
}
