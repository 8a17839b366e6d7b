package withers.report.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Checks and shows what a workspace is told. */
@Command(
    name = "config",
    mixinStandardHelpOptions = true,
    subcommands = {ConfigCheckCommand.class, ConfigShowCommand.class},
    description = "Checks a workspace's configuration, or shows what counts.",
    footerHeading = "%nExamples:%n",
    footer = {"  withers config check --workspace coast", "  withers config show"})
public final class ConfigCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Expected check or show, but found neither");
  }
}
