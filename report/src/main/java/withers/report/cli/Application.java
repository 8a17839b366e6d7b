package withers.report.cli;

import java.time.Clock;
import java.util.List;
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

/**
 * All commands, put together with what they are given from outside.
 *
 * @param points told of each point that a command comes to
 */
public record Application(
    Console console,
    Clock clock,
    Environment environment,
    Home home,
    Operator operator,
    Pause pause,
    Points points) {

  /** The application, with nobody told of points. */
  public Application(
      Console console,
      Clock clock,
      Environment environment,
      Home home,
      Operator operator,
      Pause pause) {
    this(console, clock, environment, home, operator, pause, Points.NONE);
  }

  /**
   * Runs a command.
   *
   * @param words the command line, the command's name first
   * @return its exit code
   */
  public int execute(String... words) {
    return commandLine(WithersCommand.neededFor(words)).execute(words);
  }

  /** The command line with all commands. */
  public CommandLine commandLine() {
    return commandLine(WithersCommand.all());
  }

  private CommandLine commandLine(List<Class<?>> commands) {
    return WithersCommandLine.of(
        WithersCommand.class,
        commands,
        CommandFactory.handing(console, clock, environment)
            .and(Home.class, home)
            .and(Operator.class, operator)
            .and(Pause.class, pause)
            .and(Points.class, points)
            .and(BeforeUpgrade.class, new BackupFirst(console::say))
            .and(Commands.class, this::unattended),
        console,
        ErrorHandler.standard()
            .and(VaultUnavailableException.class, ExitCode.STORAGE)
            .and(VaultDamagedException.class, ExitCode.STORAGE)
            .and(SqliteCopy.FailedException.class, ExitCode.STORAGE)
            .and(BackupRefusedException.class, ExitCode.STORAGE)
            .and(StoreUnavailableException.class, ExitCode.STORAGE));
  }

  /** What the schedule starts: the same commands, with nobody to be asked. */
  private int unattended(List<String> words, Console said, Pause waiting) {
    return new Application(said, clock, environment, home, Operator.NOBODY, waiting, points)
        .execute(words.toArray(String[]::new));
  }
}
