package withers.report.cli;

import java.time.Clock;
import picocli.CommandLine;
import withers.cli.CommandFactory;
import withers.cli.Console;
import withers.cli.Environment;
import withers.cli.ErrorHandler;
import withers.cli.WithersCommandLine;

/** All commands, put together with what they are given from outside. */
public final class Application {
  private Application() {}

  /** The command line of the application. */
  public static CommandLine commandLine(Console console, Clock clock, Environment environment) {
    return WithersCommandLine.of(
        WithersCommand.class,
        CommandFactory.handing(console, clock, environment),
        console,
        ErrorHandler.standard());
  }
}
