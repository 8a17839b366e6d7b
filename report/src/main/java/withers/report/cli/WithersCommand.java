package withers.report.cli;

import java.util.List;
import java.util.Set;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import withers.cli.InitCommand;
import withers.cli.LogCommand;
import withers.ingest.cli.IngestCommand;
import withers.ingest.cli.InspectCommand;
import withers.ingest.cli.LookUpCommand;
import withers.ingest.cli.RekeyCommand;
import withers.reconcile.cli.CalibrateCommand;
import withers.reconcile.cli.CheckCommand;
import withers.reconcile.cli.ReconcileCommand;
import withers.reconcile.cli.TraceCommand;
import withers.reconcile.cli.WorkCommand;
import withers.report.manual.cli.ManualCommand;
import withers.report.schedule.cli.ScheduleCommand;
import withers.report.schedule.cli.StatusCommand;

/** The root of the command line: every other command is a subcommand of this one. */
@Command(
    name = "withers",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description =
        "Finds microchipped animals whose registered contact is not who it should be,"
            + " and lists for each organisation what it can put right.")
public final class WithersCommand implements Runnable {

  /** The other commands, in the order in which help tells of them. */
  private static final List<Class<?>> COMMANDS =
      List.of(
          InitCommand.class,
          IngestCommand.class,
          InspectCommand.class,
          RekeyCommand.class,
          LookUpCommand.class,
          CalibrateCommand.class,
          ReconcileCommand.class,
          WorkCommand.class,
          ReportCommand.class,
          DeliveriesCommand.class,
          RunCommand.class,
          CheckCommand.class,
          TraceCommand.class,
          ExplainCommand.class,
          SettleCommand.class,
          SnoozeCommand.class,
          ScheduleCommand.class,
          AboutCommand.class,
          ForgetCommand.class,
          ReadmitCommand.class,
          ConfidentialCommand.class,
          TidyCommand.class,
          BackupCommand.class,
          RestoreCommand.class,
          VerifyCommand.class,
          LogCommand.class,
          StatusCommand.class,
          ConfigCommand.class,
          ManualCommand.class,
          DemoCommand.class);

  private static final Set<String> VERSION = Set.of("-V", "--version");

  @Spec private CommandSpec spec;

  /** All other commands. */
  static List<Class<?>> all() {
    return COMMANDS;
  }

  /**
   * The commands that must be set up to run what was typed: the one that is named first, none to
   * tell the version, or else all. Setting all up takes longer than a short command runs.
   */
  static List<Class<?>> neededFor(String... words) {
    if (words.length == 1 && VERSION.contains(words[0])) {
      return List.of();
    }
    return COMMANDS.stream()
        .filter(command -> words.length > 0 && isAlone(command, words[0]))
        .findFirst()
        .<List<Class<?>>>map(List::of)
        .orElse(COMMANDS);
  }

  /** The manual tells of all the others. */
  private static boolean isAlone(Class<?> command, String name) {
    return command != ManualCommand.class
        && command.getAnnotation(Command.class).name().equals(name);
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Expected a command, but found none");
  }
}
