package withers.report.cli;

import java.time.Clock;
import picocli.CommandLine;
import withers.cli.CommandFactory;
import withers.cli.Console;
import withers.cli.Environment;
import withers.cli.ErrorHandler;
import withers.cli.ExitCode;
import withers.cli.Operator;
import withers.cli.WithersCommandLine;
import withers.contact.VaultDamagedException;
import withers.contact.VaultUnavailableException;
import withers.report.backup.BackupRefusedException;
import withers.report.demo.Home;
import withers.report.schedule.cli.Commands;
import withers.report.send.Pause;
import withers.sqlite.SqliteCopy;

/** All commands, put together with what they are given from outside. */
public final class Application {
  private Application() {}

  /** The command line of the application. */
  public static CommandLine commandLine(
      Console console,
      Clock clock,
      Environment environment,
      Home home,
      Operator operator,
      Pause pause) {
    return WithersCommandLine.of(
        WithersCommand.class,
        CommandFactory.handing(console, clock, environment)
            .and(Home.class, home)
            .and(Operator.class, operator)
            .and(Pause.class, pause)
            .and(Commands.class, commands(clock, environment, home)),
        console,
        ErrorHandler.standard()
            .and(VaultUnavailableException.class, ExitCode.STORAGE)
            .and(VaultDamagedException.class, ExitCode.STORAGE)
            .and(SqliteCopy.FailedException.class, ExitCode.STORAGE)
            .and(BackupRefusedException.class, ExitCode.STORAGE));
  }

  /** What the schedule starts: the same commands, with nobody to be asked. */
  private static Commands commands(Clock clock, Environment environment, Home home) {
    return (words, console, pause) ->
        commandLine(console, clock, environment, home, Operator.NOBODY, pause)
            .execute(words.toArray(String[]::new));
  }
}
