package withers.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What is done with a log as a whole. */
@Command(
    name = "log",
    mixinStandardHelpOptions = true,
    subcommands = {LogCopyCommand.class, LogDumpCommand.class},
    description = "Copies the event log to another place, or writes it as text.",
    synopsisSubcommandLabel = "COMMAND",
    footerHeading = "%nExample:%n",
    footer = "  withers log copy --from embedded")
public final class LogCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Expected a command, such as \"log copy\"");
  }
}
