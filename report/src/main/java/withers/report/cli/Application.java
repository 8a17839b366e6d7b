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
import withers.point.Points;
import withers.report.backup.BackupFirst;
import withers.report.backup.BackupRefusedException;
import withers.report.demo.Home;
import withers.report.schedule.cli.Commands;
import withers.report.schedule.postgres.StoreUnavailableException;
import withers.report.send.Pause;
import withers.sqlite.SqliteCopy;
import withers.workspace.BeforeUpgrade;

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
    return commandLine(console, clock, environment, home, operator, pause, Points.NONE);
  }

  /**
   * The command line of the application.
   *
   * @param points told of each point that a command comes to
   */
  public static CommandLine commandLine(
      Console console,
      Clock clock,
      Environment environment,
      Home home,
      Operator operator,
      Pause pause,
      Points points) {
    return WithersCommandLine.of(
        WithersCommand.class,
        CommandFactory.handing(console, clock, environment)
            .and(Home.class, home)
            .and(Operator.class, operator)
            .and(Pause.class, pause)
            .and(Points.class, points)
            .and(BeforeUpgrade.class, new BackupFirst(console::say))
            .and(Commands.class, commands(clock, environment, home, points)),
        console,
        ErrorHandler.standard()
            .and(VaultUnavailableException.class, ExitCode.STORAGE)
            .and(VaultDamagedException.class, ExitCode.STORAGE)
            .and(SqliteCopy.FailedException.class, ExitCode.STORAGE)
            .and(BackupRefusedException.class, ExitCode.STORAGE)
            .and(StoreUnavailableException.class, ExitCode.STORAGE));
  }

  /** What the schedule starts: the same commands, with nobody to be asked. */
  private static Commands commands(Clock clock, Environment environment, Home home, Points points) {
    return (words, console, pause) ->
        commandLine(console, clock, environment, home, Operator.NOBODY, pause, points)
            .execute(words.toArray(String[]::new));
  }
}
